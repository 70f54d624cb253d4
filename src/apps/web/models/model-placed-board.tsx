import { useMemo, useState } from 'react';
import type { ModelFile } from '../../../bench/models/schema.ts';
import { BoardMap } from '../board/board-map.tsx';
import { drawnParts, type Hit, type PlacedPart } from '../board/drawn-part.ts';
import { PartPick } from '../board/part-pick.tsx';
import { netWords } from '../board/net-words.ts';
import { Section } from '../ui/section.tsx';

interface ModelPlacedBoardProps {
  readonly file: ModelFile;
  readonly board: NonNullable<ModelFile['board']>;
  readonly parts: readonly PlacedPart[];
}

/** The board of a model at level 2 by the places of its parts, and what each is. */
export function ModelPlacedBoard({ file, board, parts }: ModelPlacedBoardProps) {
  const [side, setSide] = useState<'front' | 'back'>('front');
  const [chosen, setChosen] = useState<Hit | null>(null);
  const drawn = useMemo(() => drawnParts(parts), [parts]);
  const other = side === 'front' ? 'back' : 'front';
  const { width_mm: width, height_mm: height } = board;
  const frame = useMemo(() => ({ width, height, side }), [width, height, side]);
  const choose = (hit: Hit | null): void => {
    setChosen(hit);
    if (hit) setSide(hit.part.side);
  };
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
      <BoardMap
        frame={frame}
        parts={drawn}
        title={`The ${side} of the board, ${width} by ${height} mm, with ${parts.length} parts on both sides`}
        chosen={chosen}
        choose={choose}
        net={chosen?.part.pads.find(({ pin }) => pin !== null && pin === chosen.pin)?.net ?? null}
      />
      <PartPick parts={drawn} chosen={chosen} choose={choose} />
      {chosen && <PartWords file={file} chosen={chosen} />}
    </Section>
  );
}

function PartWords({ file, chosen: { part, pin } }: { readonly file: ModelFile; readonly chosen: Hit }) {
  const block = file.blocks.find(({ id }) => id === part.block)?.name ?? part.block;
  const pins = part.pads.filter((pad) => pad.pin !== null);
  return (
    <p aria-live="polite">
      <b>{part.value === '' ? part.ref : `${part.ref}, ${part.value}`}</b>, {part.side}, {block}.{' '}
      <span className="small">
        {pins
          .map(
            (pad) =>
              `${pad.pin === pin ? 'Pointed at: pin' : 'Pin'} ${pad.pin}: ${pad.net === null ? 'joined to nothing' : netWords(pad.net)}`,
          )
          .join('; ')}
      </span>
    </p>
  );
}
