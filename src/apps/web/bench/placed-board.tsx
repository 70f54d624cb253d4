import { useMemo, useState } from 'react';
import type { ModelFile } from '../../../bench/models/schema.ts';
import { BoardMap } from '../board/board-map.tsx';
import type { Hit } from '../board/drawn-part.ts';
import type { Frame } from '../board/frame.ts';
import { PartPick } from '../board/part-pick.tsx';
import { dragged, EMPTY_DRAFT, polygonOf, tapped, type RegionDraft } from '../board/region-draft.ts';
import { Section } from '../ui/section.tsx';
import { BoardWords } from './board-words.tsx';
import { leadMarks, likelyParts, seenMarks } from './board-marks.ts';
import { useAtHand } from './instead-context.ts';
import { RegionPanel } from './region-panel.tsx';
import { SpotPanel } from './spot-panel.tsx';
import { useUnit } from './unit-context.ts';

type Side = Frame['side'];

/** The board by the places of its parts: what is likely at fault, what was seen, where the leads go; a part pointed at takes findings and readings. */
export function PlacedBoard({ board }: { readonly board: NonNullable<ModelFile['board']> }) {
  const { file, model, parts } = useUnit();
  const { check, remedy } = useAtHand();
  const marks = useMemo(
    () => ({
      likely: likelyParts(file.belief),
      leads: leadMarks(check?.probe ?? null),
      seen: seenMarks(file.findings, model.blocks, parts),
      work: remedy?.spots ?? [],
    }),
    [file.belief, file.findings, check, remedy, model.blocks, parts],
  );
  const [turned, setTurned] = useState<{ side: Side; advice: string } | null>(null);
  const atHand = check?.id ?? remedy?.id ?? file.advice.id;
  const advised = marks.leads[0]?.side ?? marks.work[0]?.side ?? 'front';
  const side = turned?.advice === atHand ? turned.side : advised;
  const turn = (to: Side): void => setTurned({ side: to, advice: atHand });
  const [chosen, setChosen] = useState<Hit | null>(null);
  const [draft, setDraft] = useState<RegionDraft | null>(null);
  const { width_mm: width, height_mm: height } = board;
  const frame = useMemo(() => ({ width, height, side }), [width, height, side]);
  const size = { x: width, y: height };
  const other = side === 'front' ? 'back' : 'front';
  const choose = (hit: Hit | null): void => {
    setChosen(hit);
    if (hit) turn(hit.part.side);
  };
  return (
    <Section
      id="board"
      title="Board"
      aside={
        <button type="button" onClick={() => turn(other)}>
          Show the {other}
        </button>
      }
    >
      <BoardMap
        frame={frame}
        parts={parts}
        title={`The ${side} of the board of ${model.name}, ${board.width_mm} by ${board.height_mm} mm, with ${parts.length} parts on both sides`}
        {...marks}
        net={check?.probe?.red?.net ?? null}
        chosen={chosen}
        choose={choose}
        drawing={
          draft && {
            polygon: polygonOf(draft),
            tap: (at) => setDraft(tapped(draft, at, size)),
            drag: (from, to) => setDraft(dragged(from, to, size)),
          }
        }
      />
      <BoardWords side={side} net={check?.probe?.red?.name ?? null} marks={marks} />
      {draft ? (
        <RegionPanel draft={draft} side={side} size={size} setDraft={setDraft} close={() => setDraft(null)} />
      ) : (
        <>
          <div className="row board-choices">
            <PartPick parts={parts} chosen={chosen} choose={choose} />
            <button type="button" onClick={() => setDraft(EMPTY_DRAFT)}>
              Mark an area
            </button>
          </div>
          {chosen && <SpotPanel key={`${chosen.part.ref}.${chosen.pin}`} spot={chosen} close={() => setChosen(null)} />}
        </>
      )}
    </Section>
  );
}
