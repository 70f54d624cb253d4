import type { ReactNode } from 'react';

interface SectionProps {
  readonly id: string;
  readonly title: string;
  /** Small words or a button at the right of the heading. */
  readonly aside?: ReactNode;
  readonly children: ReactNode;
  readonly className?: string;
}

/** A titled part of a page. */
export function Section({ id, title, aside, children, className = '' }: SectionProps) {
  return (
    <section className={`sheet ${className}`} aria-labelledby={`${id}-title`} id={id}>
      <header className="sheet-head">
        <h2 id={`${id}-title`}>{title}</h2>
        {aside !== undefined && <div className="sheet-aside">{aside}</div>}
      </header>
      {children}
    </section>
  );
}
