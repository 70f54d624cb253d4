import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { StockTag } from '../ui/stock-tag.tsx';

interface UnitTopProps {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  /** What the page is about, in a line. */
  readonly children?: ReactNode;
}

/** The head of a page about one unit that is not its bench: the way back, and which unit it is. */
export const UnitTop = ({ id, number, name, children }: UnitTopProps) => (
  <header className="page-head">
    <p className="small">
      <Link href={`/bench/${encodeURIComponent(id)}`}>Back to the bench</Link>
    </p>
    <h1>
      <StockTag number={number} /> {name}
    </h1>
    {children !== undefined && <p className="small muted">{children}</p>}
  </header>
);
