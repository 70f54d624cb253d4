import { behavioursOf } from './behaviour.ts';
import type { Belief } from './belief.ts';
import { likelihoodOfTrials, REPEAT_SHARE } from './likelihood-of-trials.ts';
import { lookOutcomes } from './looking.ts';
import { pointOf, readingBand, readingOutcomes } from './metering.ts';
import { meanOver } from './posterior-over-sets.ts';
import type { Behaviour, Check, DeviceModel, Evidence } from './model.ts';
import type { Observation } from './observation.ts';
import { timesOf } from './times.ts';

/** What a check may show, its chance, and what belief multiplies each state by when it does. */
export interface Outcome {
  readonly outcome: string;
  readonly chance: number;
  readonly likelihood: Float64Array;
  /** Of a reading whose circuit is known: from where to where, V, Ω or A; infinite for no limit, and both for OL. */
  readonly range?: readonly [from: number, to: number];
}

type Trial = Extract<Observation, { kind: 'trial' }>;

const WAYS: readonly Behaviour[] = ['works', 'comes-and-goes', 'fails'];

/**
 * Outcomes of a check on a unit of this belief; `before` are its answers since the last change, oldest first. Chances sum to 1. A
 * look or a reading that is repeated is expected to show what it showed, and so to tell nothing.
 */
export function outcomesOf(model: DeviceModel, belief: Belief, check: Check, before: readonly Observation[]): Outcome[] {
  const last = before.at(-1);
  if (!last) return freshOutcomes(model, belief, check);
  if (check.kind === 'try') return trialsAgain(model, belief, check, before as readonly Trial[]);
  const nothingNew = new Float64Array(belief.space.size).fill(1);
  return [{ outcome: shown(model, last), chance: 1, likelihood: nothingNew }];
}

function freshOutcomes(model: DeviceModel, { space, absent, weights }: Belief, check: Check): Outcome[] {
  const named = (outcomes: readonly (readonly [string, Float64Array])[]): Outcome[] =>
    outcomes.map(([outcome, likelihood]) => ({ outcome, chance: meanOver(weights, likelihood), likelihood }));
  if (check.kind === 'look') return named(lookOutcomes(model, space, check.block, absent));
  if (check.kind === 'measure') return named(readingOutcomes(model, space, pointOf(model, check.point)));
  const behaviours = behavioursOf(model, space, check.function, check.with, absent);
  return named(WAYS.map((way) => [way, behaviours[way]]));
}

/** Mostly a trial that is repeated shows what it showed; with REPEAT_SHARE it is as good as a new one. Belief takes either as it weighs trials. */
function trialsAgain(
  model: DeviceModel,
  { space, absent, weights }: Belief,
  check: Extract<Check, { kind: 'try' }>,
  before: readonly Trial[],
): Outcome[] {
  const behaviours = behavioursOf(model, space, check.function, check.with, absent);
  const outcomes = before.map(({ outcome }) => outcome);
  const until = likelihoodOfTrials(behaviours, outcomes);
  return WAYS.map((way) => {
    const same = outcomes.filter((outcome) => outcome === way).length / outcomes.length;
    const chance = REPEAT_SHARE * meanOver(weights, behaviours[way]) + (1 - REPEAT_SHARE) * same;
    const then = likelihoodOfTrials(behaviours, [...outcomes, way]);
    return { outcome: way, chance, likelihood: then.map((p, state) => p / until[state]!) };
  });
}

function shown(model: DeviceModel, piece: Observation): string {
  if (piece.kind === 'reading') return readingBand(pointOf(model, piece.point), piece.value);
  return piece.kind === 'finding' ? piece.sees : '';
}

/** For each check, its answers since the last remedy or transplant, oldest first. */
export function answersSinceChange(evidence: readonly Evidence[]): (check: Check) => readonly Observation[] {
  const { observed } = timesOf(evidence).at(-1)!;
  return (check) => observed.filter((piece) => answers(check, piece));
}

function answers(check: Check, piece: Observation): boolean {
  if (check.kind === 'look') return piece.kind === 'finding' && piece.block === check.block;
  if (check.kind === 'measure') return piece.kind === 'reading' && piece.point === check.point;
  return piece.kind === 'trial' && piece.function === check.function && alike(piece.with, check.with);
}

const alike = (some: readonly string[], others: readonly string[]): boolean => [...some].sort().join(' ') === [...others].sort().join(' ');
