import { atStrictness, compare, greyOf, placeInOther, type Alignment, type PictureLibrary } from '../../src/core/vision/index.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';
import { BOARDS, boardCase, type PairCase } from './vision-cases.ts';
import type { Box } from './vision-defects.ts';
import { strongCorners } from './vision-deeppcb.ts';
import { matched, Tally } from './vision-score.ts';

/** Pairs of each kind that are measured. */
const PAIRS = { hand: 24, clean: 12, scan: 16 };
const DEFECTS = 7;

interface Seen {
  readonly tally: Tally;
  readonly kinds: { right: number; asked: number };
  readonly errors: number[];
  refused: number;
}

const nothingSeen = (): Seen => ({ tally: new Tally(), kinds: { right: 0, asked: 0 }, errors: [], refused: 0 });

/** Defects planted on a photographed board that nothing was tuned on, photographed anew by hand and by flatbed. */
export async function boardFigures(library: PictureLibrary, progress: Progress): Promise<Figure[]> {
  const board = BOARDS.measuring[0];
  progress(`Comparing ${PAIRS.hand + PAIRS.clean + PAIRS.scan} pairs of a board with parts …`);
  const [hand, clean, scan] = [nothingSeen(), nothingSeen(), nothingSeen()];
  for (let i = 0; i < PAIRS.hand; i++) see(await boardCase(board, 'hand', DEFECTS, `measuring ${i}`), library, hand);
  for (let i = 0; i < PAIRS.clean; i++) see(await boardCase(board, 'hand', 0, `measuring clean ${i}`), library, clean);
  for (let i = 0; i < PAIRS.scan; i++) see(await boardCase(board, 'scan', i % 4 === 0 ? 0 : DEFECTS, `measuring ${i}`), library, scan);
  const errors = [...hand.errors, ...clean.errors];
  const found = ({ tally, refused }: Seen): string =>
    `${tally.hit} found, ${tally.missed} missed, ${tally.false} false, ${refused} pairs refused`;
  return [
    {
      figure: 'vision.boards_f1',
      value: round(hand.tally.f1),
      unit: '',
      target: '≥ 0.93',
      reference: `${PAIRS.hand} pairs of a board that the ranker never saw, ${DEFECTS} defects each (missing, added, moved, stain, scratch), turned, tilted, lit anew, blurred, JPEG; ${found(hand)}; kind right of ${round(hand.kinds.right / hand.kinds.asked)}; a plain classical pipeline: .85`,
    },
    {
      figure: 'vision.boards_false',
      value: round(clean.tally.false / PAIRS.clean),
      unit: '',
      target: '≤ 0.15',
      reference: `false boxes a pair on ${PAIRS.clean} clean pairs of the same board; a plain classical pipeline: .25`,
    },
    {
      figure: 'vision.scan_f1',
      value: round(scan.tally.f1),
      unit: '',
      target: '≥ 0.96',
      reference: `${PAIRS.scan} pairs of the same board as a flatbed gives them (no perspective, even light, dust on both), a quarter of them clean; ${found(scan)}`,
    },
    {
      figure: 'vision.align_p95_px',
      value: round(quantile(errors, 0.95)),
      unit: 'px at 2000 px',
      target: '≤ 0.15',
      reference: `${errors.length} corners on the ${PAIRS.hand + PAIRS.clean} pairs by hand, against the true map, lens included, after the local warp at full size; the photograph is 730 px wide, so .1 px of its own count as .27 here; a plain classical pipeline: .09`,
    },
  ];
}

function see(pair: PairCase, library: PictureLibrary, seen: Seen): void {
  const truth = pair.truth.map(({ box }) => box);
  const result = compare([pair.reference], pair.other, library);
  if (!result.ok) {
    seen.refused++;
    seen.tally.add(truth, []);
    return;
  }
  const proposals = atStrictness(result.proposals, 0.5);
  const boxes = proposals.map(({ box: { left, top, right, bottom } }): Box => [left, top, right, bottom]);
  seen.tally.add(truth, boxes);
  matched(truth, boxes).forEach((k, i) => {
    if (k < 0) return;
    seen.kinds.asked++;
    if (proposals[k]!.kind === pair.truth[i]!.kind) seen.kinds.right++;
  });
  seen.errors.push(...errorsOf(result.alignment, pair));
}

/** Distances at corners outside the planted defects, in px of a reference 2000 px wide. */
function errorsOf(alignment: Alignment, { reference, truth, shot }: PairCase): number[] {
  const corners = strongCorners(greyOf(reference)).filter(
    ([x, y]) => !truth.some(({ box }) => x > box[0] - 12 && x < box[2] + 12 && y > box[1] - 12 && y < box[3] + 12),
  );
  return corners.map(([x, y]) => {
    const [u, v] = placeInOther(alignment, x, y);
    const [tu, tv] = shot!.truth(x, y);
    return (Math.hypot(u - tu, v - tv) / alignment.pose.scale / reference.width) * 2000;
  });
}
