import type { RegionDraft } from '../board/region-draft.ts';
import { blockUnder, boxOf, fromBox, polygonOf } from '../board/region-draft.ts';
import { Chips } from '../ui/chips.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { nameIn } from './answer-form.ts';
import { LookAnswerForm } from './look-answer-form.tsx';
import { useUnit } from './unit-context.ts';

interface RegionPanelProps {
  readonly draft: RegionDraft;
  readonly side: 'front' | 'back';
  readonly size: { readonly x: number; readonly y: number };
  readonly setDraft: (draft: RegionDraft) => void;
  readonly close: () => void;
}

const SHAPES = [
  { value: 'rectangle', label: 'A rectangle' },
  { value: 'corners', label: 'Corner by corner' },
] as const;
/** What is seen over an area rather than at a part. */
const OVER_AN_AREA = ['residue', 'corrosion', 'dirty', 'burnt'];
const HOW = {
  rectangle: 'Draw over the board with finger or mouse, tap two opposite corners, or type the numbers.',
  corners: 'Tap one corner after the other, or type them.',
} as const;

/** An area of the board, drawn or typed, and what is seen there. */
export function RegionPanel({ draft, side, size, setDraft, close }: RegionPanelProps) {
  const { model, parts } = useUnit();
  const polygon = polygonOf(draft);
  const place = polygon.length >= 3 ? blockUnder(parts, { side, polygon }) : null;
  return (
    <section className="spot" aria-label="An area of the board">
      <div className="spot-head">
        <h3>An area of the {side}</h3>
        <button type="button" className="quiet" onClick={close}>
          Leave it
        </button>
      </div>
      <Chips legend="Shape" options={SHAPES} value={draft.shape} onChange={(shape) => setDraft({ shape, corners: [] })} />
      <p className="small">{HOW[draft.shape]} All in mm from the lower left corner of the front.</p>
      {draft.shape === 'rectangle' ? (
        <BoxFields draft={draft} size={size} setDraft={setDraft} />
      ) : (
        <CornerFields draft={draft} size={size} setDraft={setDraft} />
      )}
      {place !== null && (
        <LookAnswerForm
          target={place}
          placeName={`Area at ${nameIn(model.blocks, place)}`}
          usualMinutes={1}
          stageNeeded="board-out"
          likely={OVER_AN_AREA}
          region={{ side, polygon }}
          whenNoted={close}
        />
      )}
    </section>
  );
}

type Fields = Pick<RegionPanelProps, 'draft' | 'size' | 'setDraft'>;

function BoxFields({ draft, size, setDraft }: Fields) {
  const box = boxOf(draft);
  const set = (part: Partial<typeof box>): void => setDraft(fromBox({ ...box, ...part }));
  return (
    <div className="fields">
      <NumberField label="From the left, mm" value={box.left} max={size.x} step="any" onChange={(left) => set({ left })} />
      <NumberField label="From below, mm" value={box.bottom} max={size.y} step="any" onChange={(bottom) => set({ bottom })} />
      <NumberField label="Wide, mm" value={box.width} max={size.x} step="any" onChange={(width) => set({ width })} />
      <NumberField label="High, mm" value={box.height} max={size.y} step="any" onChange={(height) => set({ height })} />
    </div>
  );
}

function CornerFields({ draft, size, setDraft }: Fields) {
  const change = (place: number, to: [number, number]): void =>
    setDraft({ ...draft, corners: draft.corners.map((corner, i) => (i === place ? to : corner)) });
  return (
    <>
      {draft.corners.map(([x, y], i) => (
        // oxlint-disable-next-line react/no-array-index-key -- a corner is known by its place in the row alone
        <div className="fields corner-fields" key={i}>
          <NumberField
            label={`Corner ${i + 1} from the left, mm`}
            value={x}
            max={size.x}
            step="any"
            onChange={(to) => change(i, [to, y])}
          />
          <NumberField label={`Corner ${i + 1} from below, mm`} value={y} max={size.y} step="any" onChange={(to) => change(i, [x, to])} />
        </div>
      ))}
      <div className="row">
        <button type="button" onClick={() => setDraft({ ...draft, corners: [...draft.corners, [size.x / 2, size.y / 2]] })}>
          Add a corner
        </button>
        {draft.corners.length > 0 && (
          <button type="button" onClick={() => setDraft({ ...draft, corners: draft.corners.slice(0, -1) })}>
            Take the last away
          </button>
        )}
      </div>
    </>
  );
}
