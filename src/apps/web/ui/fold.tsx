import type { ReactNode } from 'react';

/** Something that opens on demand. */
export function Fold({
  title,
  children,
  open = false,
}: {
  readonly title: ReactNode;
  readonly children: ReactNode;
  readonly open?: boolean;
}) {
  return (
    <details className="fold" open={open}>
      <summary>{title}</summary>
      <div className="fold-body">{children}</div>
    </details>
  );
}
