import type { ReactNode } from 'react';
import { chance } from '../format/number.ts';

interface BarProps {
  readonly label: ReactNode;
  readonly value: number;
  /** Where it stood before; a mark shows it. */
  readonly before?: number;
}

/** A chance as a bar with its number in words beside it. */
export function Bar({ label, value, before }: BarProps) {
  return (
    <div className="bar">
      <span className="bar-label">{label}</span>
      <span className="bar-track" aria-hidden="true">
        <span className="bar-fill" style={{ inlineSize: `${Math.max(0.5, value * 100)}%` }} />
        {before !== undefined && Math.abs(before - value) >= 0.005 && (
          <span className="bar-before" style={{ insetInlineStart: `${before * 100}%` }} />
        )}
      </span>
      <span className="bar-value">{chance(value)}</span>
    </div>
  );
}
