import type { ReactNode } from 'react';
import type { BeliefView } from '../../../bench/views/index.ts';
import { Bar } from '../ui/bar.tsx';

const SHOWN_BLOCKS = 8;

/** The likeliest blocks as bars, the others folded away; `children` are bars after the likeliest. */
export function BlockBars({ blocks, children }: { readonly blocks: BeliefView['blocks']; readonly children?: ReactNode }) {
  const sorted = blocks.toSorted((a, b) => b.chance - a.chance);
  return (
    <>
      {sorted.slice(0, SHOWN_BLOCKS).map((block) => (
        <Bar key={block.id} label={block.name} value={block.chance} before={block.before} />
      ))}
      {children}
      {sorted.length > SHOWN_BLOCKS && (
        <details className="why">
          <summary>The other {sorted.length - SHOWN_BLOCKS} blocks</summary>
          {sorted.slice(SHOWN_BLOCKS).map((block) => (
            <Bar key={block.id} label={block.name} value={block.chance} before={block.before} />
          ))}
        </details>
      )}
    </>
  );
}
