import type { ReactNode } from 'react';

/** A wide table that scrolls sideways by itself, so that the page never does; with the arrow keys too. */
export function TableScroll({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reachable by keyboard (WCAG 2.1.1)
    <section className="table-scroll" aria-label={`${label}, table`} tabIndex={0}>
      <table>{children}</table>
    </section>
  );
}
