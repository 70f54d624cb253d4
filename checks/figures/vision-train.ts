import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { lay, type Laying } from '../../src/core/vision/difference/compare.ts';
import { NO_PART } from '../../src/core/vision/difference/part-features.ts';
import { DIFFERENCE_KINDS, type DifferenceKind, type Ranker } from '../../src/core/vision/difference/profile.ts';
import type { PictureLibrary } from '../../src/core/vision/picture-library.ts';
import type { BoostedTrees } from '../../src/core/vision/ranking/boosted-trees.ts';
import { growBoostedTrees, GROWING } from '../../src/core/vision/ranking/grow-boosted-trees.ts';
import { openPictureLibrary } from '../../src/edges/photos/picture-library.ts';
import { round, type Progress } from './figure.ts';
import { BOARDS, boardCase, deepPcbCase, deepPcbNames, turnedCase, type PairCase } from './vision-cases.ts';
import type { Box } from './vision-defects.ts';
import { renderedTuningPairs, type RenderedPair } from './vision-render-pairs.ts';
import { renderPlans } from './vision-render-set.ts';
import { drawRenders } from './vision-renders.ts';
import { COUNTS_AT, DEEPPCB_MARGIN_PX, meets, overUnion, withMargin } from './vision-score.ts';

/** A candidate of a tuning pair: what the ranker sees, and what it truly is. */
export interface Row {
  readonly profile: 'bare' | 'photo' | 'placed';
  readonly features: readonly number[];
  readonly kind: DifferenceKind | null;
}

/** Pairs of each board for tuning, by hand and by flatbed, and how many of them are clean. */
export const TUNING_PAIRS = { hand: 10, scan: 8, clean: 0.25 };

/** The candidates of one pair, told real or not by the truth. None where the pair cannot be laid together. */
export function rowsOf(pair: PairCase, library: PictureLibrary): Row[] {
  const laying = lay([pair.reference], pair.other, library);
  if (!laying.ok) return [];
  const isBare = laying.profile.name === 'bare';
  const { width, height } = pair.reference;
  const told = toldApart(
    laying,
    pair,
    (box, truth) => overUnion(truth, withMargin(box, isBare ? DEEPPCB_MARGIN_PX : 0, width, height)) >= COUNTS_AT,
  );
  return told.map((row) => ({ ...row, profile: laying.profile.name }));
}

/** The candidates of a drawn pair whose parts are known. */
export function placedRowsOf({ references, pair, parts }: RenderedPair, library: PictureLibrary): Row[] {
  const laying = lay(references, pair.other, library, { parts });
  return laying.ok ? toldApart(laying, pair, meets).map((row) => ({ ...row, profile: 'placed' })) : [];
}

/** A row of a photographed board for the ranker that knows parts: there are none. */
const withoutParts = (row: Row): Row => ({ ...row, profile: 'placed', features: [...row.features, ...NO_PART] });

function toldApart({ candidates }: Laying, { truth }: PairCase, isMet: (box: Box, truth: Box) => boolean): Omit<Row, 'profile'>[] {
  return candidates.map(({ candidate: { left, top, right, bottom }, features }) => ({
    features: [...features].map((v) => round(v, 5)),
    kind: truth.find(({ box }) => isMet([left, top, right + 1, bottom + 1], box))?.kind ?? null,
  }));
}

/**
 * The pairs that the rankers learn from: of the tuning half of DeepPCB every second pair as it is and every fourth photographed anew, and the tuning boards. More of
 * them were not tried.
 */
export async function* tuningPairs(): AsyncGenerator<PairCase> {
  for (const board of BOARDS.tuning)
    for (const how of ['hand', 'scan'] as const)
      for (let i = 0; i < TUNING_PAIRS[how]; i++)
        yield boardCase(board, how, i < TUNING_PAIRS.clean * TUNING_PAIRS[how] ? 0 : 7, `tuning ${i}`);
  const names = deepPcbNames('tuning');
  for (const name of names.filter((_, i) => i % 2 === 0)) yield deepPcbCase(name);
  for (const name of names.filter((_, i) => i % 4 === 0)) yield turnedCase(name);
}

/** Learns all rankers and writes their numbers. */
export async function train(progress: Progress): Promise<void> {
  const library = await openPictureLibrary();
  const rows: Row[] = [];
  const count = { pairs: 0, true: 0 };
  const take = (pair: PairCase, fresh: readonly Row[]): void => {
    rows.push(...fresh);
    count.pairs++;
    count.true += pair.truth.length;
    const met = rows.filter(({ kind }) => kind !== null).length;
    progress(`${count.pairs} pairs laid together, ${rows.length} candidates, ${met} of them real, for ${count.true} true differences …`);
  };
  for await (const pair of tuningPairs()) take(pair, rowsOf(pair, library));
  rows.push(...rows.filter(({ profile }) => profile === 'photo').map(withoutParts));
  const plans = renderPlans('tuning');
  if (!(await drawRenders(plans, progress)))
    throw new Error('Without Chromium the photos for training cannot be drawn: set SALVOR_CHROMIUM to its path.');
  for (const plan of plans) for await (const each of renderedTuningPairs(plan)) take(each.pair, placedRowsOf(each, library));
  const file = fileURLToPath(new URL('../../src/core/vision/ranking/ranker-numbers.ts', import.meta.url));
  writeFileSync(file, pageOf({ bare: rankerOf(rows, 'bare'), photo: rankerOf(rows, 'photo'), placed: rankerOf(rows, 'placed') }, rows));
}

export function rankerOf(all: readonly Row[], profile: Row['profile']): Ranker {
  const rows = all.filter((row) => row.profile === profile);
  const real = growBoostedTrees(
    rows.map(({ features }) => Float32Array.from(features)),
    rows.map(({ kind }) => kind !== null),
    GROWING,
  );
  const actual = rows.filter(({ kind }) => kind !== null);
  const kinds: Partial<Record<DifferenceKind, BoostedTrees>> = {};
  for (const kind of DIFFERENCE_KINDS) {
    if (!actual.some((row) => row.kind === kind)) continue;
    kinds[kind] = growBoostedTrees(
      actual.map(({ features }) => Float32Array.from(features)),
      actual.map((row) => row.kind === kind),
      { ...GROWING, trees: 40, depth: 2, rate: 0.2 },
    );
  }
  return { real, kinds };
}

function pageOf(rankers: Record<Row['profile'], Ranker>, rows: readonly Row[]): string {
  const count = (profile: string, real: boolean): number =>
    rows.filter((row) => row.profile === profile && (row.kind !== null) === real).length;
  const short = (_: string, value: unknown): unknown => (typeof value === 'number' ? round(value, 4) : value);
  const { trees, depth, rate } = GROWING;
  return `import type { Ranker } from '../difference/profile.ts';

/**
 * What was learned of real and false candidates, in the order of FEATURES. Written by \`npm run train:vision\`, not by hand: ${trees} trees of depth ${depth} at rate ${rate}, and
 * 40 of depth 2 for each kind. Learned from the tuning parts alone: bare from every fourth pair of DeepPCB, some of them photographed anew as well (${count('bare', true)} real and
 * ${count('bare', false)} false candidates); photo from defects planted on two photographed boards, by hand and by flatbed (${count('photo', true)} and ${count('photo', false)}); placed, which sees
 * PART_FEATURES as well, from the same and from drawn photos of random boards (${count('placed', true)} and ${count('placed', false)}).
 */
export const RANKERS: Readonly<Record<'bare' | 'photo' | 'placed', Ranker>> = {
  bare: ${JSON.stringify(rankers.bare, short)},
  photo: ${JSON.stringify(rankers.photo, short)},
  placed: ${JSON.stringify(rankers.placed, short)},
};
`;
}
