import { COUNTS_AT } from './vision-score.ts';
import { proposeOutlines, type OutlineKind } from '../../src/core/vision/index.ts';
import { round, type Figure, type Progress } from './figure.ts';
import { hasOutlineBoards, MEASURED, outlineCase, overlapWith, patchOf, type OutlineCase } from './outline-cases.ts';
import type { Box } from './vision-defects.ts';

/** What was proposed on a photo against what stands there, one to one. */
export interface OutlineScore {
  readonly proposed: number;
  readonly hit: number;
  readonly truth: number;
  readonly kinds: ReadonlyMap<OutlineKind, number>;
}

/** Proposals at the usual chance on one photo of known things. Best overlaps are matched first. */
export function scoreOutlines({ pixels, pxPerMm, board, truth }: OutlineCase): OutlineScore {
  const answer = proposeOutlines(pixels, pxPerMm, { board: patchOf(board) });
  if (!answer.ok) throw new Error(`no outlines: ${answer.code}`);
  const boxes = answer.outlines.map(({ box: { left, top, right, bottom } }): Box => [left, top, right, bottom]);
  const pairs = truth
    .flatMap((thing, i) => boxes.map((box, k) => ({ i, k, overlap: overlapWith(box, thing) })))
    .filter(({ overlap }) => overlap >= COUNTS_AT)
    .sort((a, b) => b.overlap - a.overlap);
  const [found, used] = [new Set<number>(), new Set<number>()];
  for (const { i, k } of pairs) {
    if (found.has(i) || used.has(k)) continue;
    found.add(i);
    used.add(k);
  }
  const kinds = new Map<OutlineKind, number>();
  for (const { kind } of answer.outlines) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  return { proposed: boxes.length, hit: found.size, truth: truth.length, kinds };
}

/** Outlines proposed on a photographed board that nothing was tuned on, against its board file. None, and a sentence, where the photos are absent. */
export async function measureOutlines(progress: Progress): Promise<Figure[]> {
  if (!hasOutlineBoards()) {
    progress('The photographs of boards with board files are not here: the outlines are not measured.');
    return [];
  }
  progress('Proposing outlines on a photographed board …');
  const { proposed, hit, truth, kinds } = scoreOutlines(await outlineCase(MEASURED));
  const said = [...kinds].map(([kind, count]) => `${count} × ${kind}`).join(', ');
  const reference =
    `${proposed} outlines at chance 0.5 and above on a photographed open-hardware board (its photo 8.8 px/mm, its elements on the photographed side with copper, and its holes, ` +
    `from its board file: ${truth}; ${hit} met one to one at IoU ≥ ${COUNTS_AT}; proposed as ${said}); the ranker learned on drawn boards and on one side of another board alone; this one was never learned from, but looked at between two ways of drawing boards`;
  return [
    { figure: 'models.outline_recall', value: round(hit / truth), unit: '', target: '≥ 0.6', reference },
    { figure: 'models.outline_precision', value: round(hit / proposed), unit: '', target: '≥ 0.7', reference },
  ];
}
