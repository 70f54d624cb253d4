import { mapped, type Pose, type Zone } from '../../core/vision/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { BlindZone, ComparisonView, DifferenceView, PhotoQuestion, PoseView } from '../views/index.ts';
import { boardFrame, partPlaces, type BoardFrame } from './board-frame.ts';
import type { FoundDifference, KeptComparison, PartPlace } from './comparer.ts';
import { poseAdvice } from './picture-words.ts';
import { referenceUrl, type Reference } from './references.ts';

/** Height of a part that stands for tall ones, mm (common practice, no source). */
const TALL_MM = 3;

/** What a comparison was made of. */
export interface Compared {
  readonly question: PhotoQuestion;
  readonly model: Model;
  readonly reference: Reference;
}

type Result = NonNullable<ComparisonView['result']>;

/** A comparison for the screen: differences with their parts and what was said of them, and what nobody has looked at. */
export function resultView(state: Readonly<BenchState>, key: string, kept: KeptComparison, of: Compared): Result {
  const { question, model, reference } = of;
  const frame = frameOf(of);
  const width = kept.reference.width;
  const parts = frame ? partPlaces(model, question.side, frame) : [];
  return {
    width_px: width,
    height_px: kept.reference.height,
    reference_url: referenceUrl(reference, model.file.id, question.side),
    board_map: frame && boardMap(frame, width),
    laid_url: `/api/comparisons/${key}/laid`,
    references: kept.used.references,
    variations: kept.used.variations,
    differences: differencesOf(state, kept, of, frame),
    zones: blindZones(
      kept.zones.filter(({ left, top, right, bottom }) =>
        isOnBoard(
          [
            [left, top],
            [right, bottom],
          ],
          model,
          frame,
          width,
        ),
      ),
      parts,
      width,
    ),
    pose: poseView(kept.pose),
    parallax_px: parallaxPx(kept.pose, frame, width),
    advice: poseAdvice(kept.pose),
  };
}

/** How the board lies on the first reference; null where its size or its corners are not known. */
export function frameOf({
  question,
  model,
  reference,
}: Pick<Compared, 'model' | 'reference'> & { readonly question: Pick<PhotoQuestion, 'side'> }): BoardFrame | null {
  const { board } = model.file;
  return board && reference.corners ? boardFrame(board, question.side, reference.corners) : null;
}

/** From px of the frame, `width` wide, to mm of the board. */
const boardMap = ({ toBoard: m }: BoardFrame, width: number): number[] => m.map((value, i) => (i % 3 === 2 ? value : value / width));

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

function differencesOf(
  state: Readonly<BenchState>,
  kept: KeptComparison,
  { question, model }: Compared,
  frame: BoardFrame | null,
): DifferenceView[] {
  const blocks = new Map(model.circuit?.parts.map(({ ref, block }) => [ref, block]));
  const said = new Map(
    state.pictures.judged.filter(({ photo }) => photo === question.photo).map((each) => [JSON.stringify(each.outline), each.verdict]),
  );
  const onThisBoard = kept.proposals.filter(({ outline }) => isOnBoard(outline, model, frame, kept.reference.width));
  return onThisBoard.map(({ outline, outlineThere, kind, chance, part }, i) => {
    const there = outlineThere.map(([x, y]): [number, number] => [rounded(x, 5), rounded(y, 5)]);
    return {
      rank: i + 1,
      outline: outline.map(([x, y]): [number, number] => [x, y]),
      outline_photo: there,
      outline_mm: frame && outline.map(([x, y]) => onBoard(frame, x / kept.reference.width, y / kept.reference.width)),
      shows: kind,
      chance: rounded(chance, 4),
      part: part ?? null,
      block: blocks.get(part ?? '') ?? null,
      verdict: said.get(JSON.stringify(there)) ?? null,
    };
  });
}

/** What lies over the edge by less is a part that reaches over it, mm. */
const OVER_THE_EDGE_MM = 1;

/** Whether the middle of a polygon lies on the board; always so where it is not known where the board is. What lies beside the board differs with every photo. */
function isOnBoard(polygon: FoundDifference['outline'], model: Model, frame: BoardFrame | null, width: number): boolean {
  const { board } = model.file;
  if (!frame || !board) return true;
  const mean = (axis: 0 | 1): number => polygon.reduce((sum, spot) => sum + spot[axis], 0) / polygon.length / width;
  const [x, y] = onBoard(frame, mean(0), mean(1));
  return (
    x >= -OVER_THE_EDGE_MM && y >= -OVER_THE_EDGE_MM && x <= board.width_mm + OVER_THE_EDGE_MM && y <= board.height_mm + OVER_THE_EDGE_MM
  );
}

function onBoard({ toBoard }: BoardFrame, x: number, y: number): [number, number] {
  const [u, v] = mapped(toBoard, x, y);
  return [rounded(u, 2), rounded(v, 2)];
}

export const poseView = ({ turnDeg, tiltRightDeg, tiltDownDeg, tiltDeg, scale }: Pose): PoseView => ({
  turn_deg: rounded(turnDeg, 1),
  tilt_right_deg: rounded(tiltRightDeg, 1),
  tilt_down_deg: rounded(tiltDownDeg, 1),
  tilt_deg: rounded(tiltDeg, 1),
  scale: rounded(scale, 3),
});

/** How far the top of a tall part is seen beside its foot because of a lean: height × tan(lean), in px of a photo so wide. Null where mm are not known on it. */
export function parallaxPx({ tiltDeg }: Pick<Pose, 'tiltDeg'>, frame: BoardFrame | null, width: number): number | null {
  if (!frame) return null;
  const [a, b] = [mapped(frame.toPhoto, 0, 0), mapped(frame.toPhoto, 1, 0)];
  const pxPerMm = Math.hypot(a[0] - b[0], a[1] - b[1]) * width;
  return rounded(TALL_MM * Math.tan((tiltDeg * Math.PI) / 180) * pxPerMm, 1);
}

/** Squares of one reason that touch one another, with the parts whose middle lies in them; the largest first. */
function blindZones(zones: readonly Zone[], parts: readonly PartPlace[], width: number): BlindZone[] {
  const left = [...zones];
  const groups: Zone[][] = [];
  for (let seed = left.pop(); seed; seed = left.pop()) {
    const group = [seed];
    for (const member of group)
      for (let i = left.length - 1; i >= 0; i--)
        if (left[i]!.reason === member.reason && touches(left[i]!, member)) group.push(...left.splice(i, 1));
    groups.push(group);
  }
  return groups
    .toSorted((a, b) => b.length - a.length)
    .map((group) => ({
      reason: group[0]!.reason,
      squares: group.map(({ left: l, top, right, bottom }): [number, number, number, number] => [l, top, right, bottom]),
      parts: parts
        .filter(({ x, y }) =>
          group.some((zone) => x * width >= zone.left && x * width < zone.right && y * width >= zone.top && y * width < zone.bottom),
        )
        .map(({ part }) => part),
    }));
}

const touches = (a: Zone, b: Zone): boolean => a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
