import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { judgedCandidates } from '../../src/core/vision/proposals/index.ts';
import { growBoostedTrees, type Growing } from '../../src/core/vision/ranking/grow-boosted-trees.ts';
import { round, type Progress } from './figure.ts';
import { bestOverlap, outlineCase, patchOf, TUNED, type OutlineCase } from './outline-cases.ts';

const OUTLINE_GROWING: Growing = { trees: 100, depth: 4, rate: 0.12, leastWeight: 3, towardsZero: 3 };
/** Drawn boards that are learned from. */
export const DRAWN_BOARDS = 10;
/** False candidates that are learned from, of each board: there are many more of them. */
const FALSE_EACH = 800;
/** A candidate that overlaps a true outline so much is real; less than the second is false; what lies between teaches nothing. */
const REAL = { from: 0.5, below: 0.3 };
/** The one photographed board counts several times: there are nine things on it. */
const PHOTO_TIMES = 3;

interface Rows {
  readonly features: Float32Array[];
  readonly real: boolean[];
}

/** Learns which candidates are real from drawn boards and the one photographed board for tuning, and writes the numbers. `draw` gives the board of a seed. */
export async function train(draw: (seed: number) => Promise<OutlineCase>, progress: Progress): Promise<void> {
  const rows: Rows = { features: [], real: [] };
  const photo = await outlineCase(TUNED);
  for (let k = 0; k < PHOTO_TIMES; k++) addRows(photo, rows);
  for (let seed = 0; seed < DRAWN_BOARDS; seed++) {
    addRows(await draw(seed), rows);
    progress(
      `${seed + 1} of ${DRAWN_BOARDS} boards drawn, ${rows.real.length} candidates, ${rows.real.filter(Boolean).length} of them real …`,
    );
  }
  const trees = growBoostedTrees(rows.features, rows.real, OUTLINE_GROWING);
  const file = fileURLToPath(new URL('../../src/core/vision/proposals/outline-numbers.ts', import.meta.url));
  writeFileSync(file, pageOf(trees, rows));
}

function addRows(board: OutlineCase, { features, real }: Rows): void {
  const judged = judgedCandidates(board.pixels, board.pxPerMm, { board: patchOf(board.board) })!;
  const overlaps = judged.candidates.rectangles.map(({ left, top, right, bottom }) =>
    bestOverlap(
      [left, top, right, bottom].map((value) => value * judged.toPhoto) as unknown as Parameters<typeof bestOverlap>[0],
      board.truth,
    ),
  );
  const stride = Math.max(1, Math.floor(overlaps.filter((overlap) => overlap < REAL.below).length / FALSE_EACH));
  let seen = 0;
  overlaps.forEach((overlap, k) => {
    const isReal = overlap >= REAL.from;
    if (!isReal && (overlap >= REAL.below || seen++ % stride !== 0)) return;
    features.push(judged.features[k]!);
    real.push(isReal);
  });
}

function pageOf(trees: object, { real }: Rows): string {
  const short = (_: string, value: unknown): unknown => (typeof value === 'number' ? round(value, 4) : value);
  const { trees: count, depth, rate } = OUTLINE_GROWING;
  const right = real.filter(Boolean).length;
  return `import type { BoostedTrees } from '../ranking/boosted-trees.ts';

/**
 * What was learned of real and false outlines, in the order of \`featuresOf\`. Written by \`npm run train:outlines\`, not by hand: ${count} trees of depth ${depth} at rate ${rate}, from
 * ${DRAWN_BOARDS} drawn boards of the invented models and one side of one photographed board (${right} real and ${real.length - right} false candidates).
 */
export const OUTLINE_RANKER: BoostedTrees = ${JSON.stringify(trees, short)};
`;
}
