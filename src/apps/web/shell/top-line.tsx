import { Link } from 'wouter';
import { useBench } from '../api/queries.ts';
import { OutboxBadge } from '../offline/outbox-badge.tsx';
import { LookButton } from './look-button.tsx';
import { PlaceIcon } from './place-icon.tsx';

/** Name of the bench, the look, the settings. */
export function TopLine() {
  const bench = useBench();
  return (
    <header className="top-line">
      <Link href="/pile" className="bench-name">
        <span className="mark" aria-hidden="true" />
        {bench.data?.name || 'Salvor'}
      </Link>
      <div className="top-tools">
        <OutboxBadge />
        <LookButton />
        <Link href="/settings" className="icon-link" aria-label="Settings">
          <PlaceIcon name="settings" />
        </Link>
      </div>
    </header>
  );
}
