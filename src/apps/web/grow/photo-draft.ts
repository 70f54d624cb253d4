import { scaleError, scaleOf, type Marks, type Spot } from '../fit/photo-marks.ts';
import { backFrame, boardSize, frontFrame, worstMiss, type PhotoMarks } from './photo-frame.ts';

/** What a click on a photo of the whole board means: an end of the known distance, a corner of the board, or a hole that shows on both sides. */
export type PhotoTool = 'scale' | 'corners' | 'holes';

/** Marks of one photo while they are made. */
export interface PhotoDraft {
  readonly scale: readonly Spot[];
  readonly apartMm: number;
  readonly corners: readonly Spot[];
  readonly pairs: PhotoMarks['pairs'];
  /** A hole that was clicked on one of the two photos only. */
  readonly half: { readonly front?: Spot; readonly back?: Spot };
}

export const CORNER_NAMES = ['lower left', 'lower right', 'upper left'] as const;
export const MOST_PAIRS = 60;

export const beginDraft = (marks: Omit<PhotoMarks, 'size'> | null): PhotoDraft => ({
  scale: marks?.scale ? [marks.scale.from, marks.scale.to] : [],
  apartMm: marks?.scale?.mm ?? 20,
  corners: marks?.corners ?? [],
  pairs: marks?.pairs ?? [],
  half: {},
});

/** The draft after a click on the photo of a side. A click beyond the last end or corner begins that mark anew. */
export function clicked(draft: PhotoDraft, tool: PhotoTool, on: 'front' | 'back', spot: Spot): PhotoDraft {
  if (tool === 'scale') return { ...draft, scale: draft.scale.length < 2 ? [...draft.scale, spot] : [spot] };
  if (tool === 'corners') return { ...draft, corners: draft.corners.length < CORNER_NAMES.length ? [...draft.corners, spot] : [spot] };
  const half: PhotoDraft['half'] = on === 'front' ? { ...draft.half, front: spot } : { ...draft.half, back: spot };
  const { front, back } = half;
  if (!front || !back) return { ...draft, half };
  return { ...draft, half: {}, pairs: [...draft.pairs, { front, back }].slice(-MOST_PAIRS) };
}

/** Without the last mark of the tool. */
export function withoutLast(draft: PhotoDraft, tool: PhotoTool): PhotoDraft {
  if (tool === 'scale') return { ...draft, scale: draft.scale.slice(0, -1) };
  if (tool === 'corners') return { ...draft, corners: draft.corners.slice(0, -1) };
  return draft.half.front || draft.half.back ? { ...draft, half: {} } : { ...draft, pairs: draft.pairs.slice(0, -1) };
}

/** The last mark of the tool moved by px of the photo on which it stands. */
export function nudgedLast(draft: PhotoDraft, tool: PhotoTool, on: 'front' | 'back', by: Spot): PhotoDraft {
  const moved = (spot: Spot): Spot => ({ x: spot.x + by.x, y: spot.y + by.y });
  const last = (spots: readonly Spot[]): Spot[] => spots.map((spot, i) => (i === spots.length - 1 ? moved(spot) : spot));
  if (tool === 'scale') return { ...draft, scale: last(draft.scale) };
  if (tool === 'corners') return { ...draft, corners: last(draft.corners) };
  const half = draft.half[on];
  if (half) return { ...draft, half: { ...draft.half, [on]: moved(half) } };
  return { ...draft, pairs: draft.pairs.map((pair, i) => (i === draft.pairs.length - 1 ? { ...pair, [on]: moved(pair[on]) } : pair)) };
}

/** The draft as marks of a photo of that size. */
export function marksOf({ scale: [from, to], apartMm, corners, pairs }: PhotoDraft, size: PhotoMarks['size']): PhotoMarks {
  return { size, scale: from && to ? { from, to, mm: apartMm } : null, corners, pairs };
}

/** The draft as the stage of a photo shows it: scale as a line, corners and holes as small round marks with their names. */
export function shownOn(on: 'front' | 'back', draft: PhotoDraft, isOther: boolean): Marks {
  const half = draft.half[on];
  const holes = [...draft.pairs.map((pair) => pair[on]), ...(half ? [half] : [])].map((spot, i) => ({ spot, name: String(i + 1) }));
  const corners = isOther ? [] : draft.corners.map((spot, i) => ({ spot, name: CORNER_NAMES[i]! }));
  return { scale: isOther ? [] : draft.scale, pending: [], pads: [...corners, ...holes].map(dot) };
}

/** Numbered places as the stage of a photo shows them. */
export const placesAsMarks = (places: readonly Spot[]): Marks => ({
  scale: [],
  pending: [],
  pads: places.map((spot, i) => dot({ spot, name: String(i + 1) })),
});

const dot = ({ spot, name }: { readonly spot: Spot; readonly name: string }): Marks['pads'][number] => ({
  name,
  kind: 'peg',
  round: true,
  xPx: spot.x,
  yPx: spot.y,
  wPx: DOT_PX,
  hPx: DOT_PX,
});

const DOT_PX = 14;

/** What is known so far of where the photo of a side lies, in words; `front` is what is known of the front, for the back. */
export function knownOf(side: 'front' | 'back', draft: PhotoDraft, size: PhotoMarks['size'], front: PhotoMarks | null): string {
  const marks = marksOf(draft, size);
  const scale = scaleOf({ scale: draft.scale, pending: [], pads: [] }, draft.apartMm);
  const accuracy = scale ? `The scale is good to ± ${(100 * scaleError(scale)).toFixed(1)} %. ` : '';
  if (side === 'front') {
    const frame = frontFrame(marks);
    if (!frame) return 'The scale is not set yet.';
    const { width, height } = boardSize(frame, marks);
    const whole =
      draft.corners.length < CORNER_NAMES.length ? ' The whole photo counts as the board until its three corners are marked.' : '';
    return `${accuracy}The board is ${width.toFixed(1)} by ${height.toFixed(1)} mm.${whole}`;
  }
  const lies = front && frontFrame(front);
  if (!lies) return 'Set the scale of the front first: the back is laid under it.';
  const frame = backFrame(lies, marks);
  if (!frame) return 'Mark two holes or more that show on both photos, far apart.';
  if (draft.pairs.length < 3) return 'The back lies under the front. A third hole would show how well.';
  return `The back lies under the front; the holes miss each other by ${worstMiss(lies, frame, draft.pairs).toFixed(2)} mm at worst.`;
}
