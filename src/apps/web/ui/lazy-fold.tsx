import { useState, type ReactNode } from 'react';

/** Something that opens on demand, and asks the bench nothing before. */
export function LazyFold({ title, children }: { readonly title: ReactNode; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && <div className="fold-body">{children}</div>}
    </details>
  );
}
