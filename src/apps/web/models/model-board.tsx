import { useState } from 'react';
import type { ModelFile } from '../../../bench/models/index.ts';
import { BlocksPicture } from '../bench/blocks-picture.tsx';
import { Section } from '../ui/section.tsx';

/** The board with its blocks and points, seen from either side. */
export function ModelBoard({ file }: { readonly file: ModelFile }) {
  const [side, setSide] = useState<'front' | 'back'>('front');
  if (file.board === undefined) return null;
  const other = side === 'front' ? 'back' : 'front';
  const points = file.points.flatMap((point) =>
    point.at && point.side === side ? [{ id: point.id, text: point.name, at: point.at, probe: false }] : [],
  );
  return (
    <Section
      id="board"
      title="Board"
      aside={
        <button type="button" onClick={() => setSide(other)}>
          Show the {other}
        </button>
      }
    >
      <BlocksPicture
        board={file.board}
        side={side}
        blocks={file.blocks.flatMap((block) => (block.at ? [{ id: block.id, text: block.name, at: block.at, chance: null }] : []))}
        points={points}
        findings={[]}
        title={`The ${side} of the board, ${file.board.width_mm} by ${file.board.height_mm} mm`}
      />
      <p className="small muted">
        Seen from the {side}, {file.board.width_mm} × {file.board.height_mm} mm
        {points.length > 0 && `. Points here: ${points.map((point) => point.text).join(', ')}`}.
      </p>
    </Section>
  );
}
