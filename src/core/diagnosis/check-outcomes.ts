import { behavioursOf } from './behaviour.ts';
import type { Belief } from './belief.ts';
import { lookOutcomes } from './looking.ts';
import { pointOf, readingOutcomes } from './metering.ts';
import { meanOver } from './posterior-over-sets.ts';
import type { Behaviour, Check, DeviceModel, Evidence } from './model.ts';

/** What a check may show, and the chance of it by state; the chances of a state sum to 1. */
export type Outcomes = readonly (readonly [outcome: string, chance: Float64Array])[];

/** Of what a check tells, its repetition tells this share: the unit and the person are the same. */
const REPEAT_SHARE = 0.1;

/** Outcomes of a check on a unit of this belief. A repeat is nearly uninformative: mostly what is expected anyway. */
export function outcomesOf(model: DeviceModel, belief: Belief, check: Check, repeat: boolean): Outcomes {
  const fresh = freshOutcomes(model, belief, check);
  return repeat ? fresh.map(([outcome, chance]) => [outcome, flattened(chance, belief.weights)] as const) : fresh;
}

function freshOutcomes(model: DeviceModel, { space, absent }: Belief, check: Check): Outcomes {
  if (check.kind === 'look') return lookOutcomes(model, space, check.block, absent);
  if (check.kind === 'measure') return readingOutcomes(model, space, pointOf(model, check.point));
  const behaviours = behavioursOf(model, space, check.function, check.with, absent);
  return (['works', 'comes-and-goes', 'fails'] satisfies Behaviour[]).map((way) => [way, behaviours[way]]);
}

function flattened(chance: Float64Array, weights: Float64Array): Float64Array {
  const mean = meanOver(weights, chance);
  return chance.map((p) => REPEAT_SHARE * p + (1 - REPEAT_SHARE) * mean);
}

/** Whether a check was answered since the last remedy or transplant. */
export function answeredBy(evidence: readonly Evidence[]): (check: Check) => boolean {
  const lastChange = evidence.findLastIndex(({ kind }) => kind === 'remedy' || kind === 'transplant');
  const done = new Set(evidence.slice(lastChange + 1).flatMap(keyOfEvidence));
  return (check) => done.has(keyOfCheck(check));
}

function keyOfEvidence(piece: Evidence): string[] {
  if (piece.kind === 'trial') return [tryKey(piece.function, piece.with)];
  if (piece.kind === 'finding') return [`look ${piece.block}`];
  return piece.kind === 'reading' ? [`measure ${piece.point}`] : [];
}

function keyOfCheck(check: Check): string {
  if (check.kind === 'try') return tryKey(check.function, check.with);
  return check.kind === 'look' ? `look ${check.block}` : `measure ${check.point}`;
}

const tryKey = (name: string, accessories: readonly string[]): string => `try ${name} ${[...accessories].sort().join(' ')}`;
