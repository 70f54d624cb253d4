import { behaviourOf } from '../models/behaves-by-mode.ts';
import type { Model, ModelFile } from '../models/index.ts';
import type { Item } from '../state.ts';
import { byHistory } from './by-history.ts';

type Fault = ModelFile['faults'][number];

/** Chance that a function whose blocks are all well fails all the same when tried. Common practice, no source. */
const STRAY = 0.03;

/**
 * Jobs count once the unit has left the bench: until then they bear on what is believed of it, and nothing counts twice. What comes back counts no more until it leaves again.
 */
export const hasLeft = ({ status }: Pick<Item, 'status'>): boolean => status !== 'bought' && status !== 'on-the-bench';

/**
 * What was wrong with a unit, seen from its end: the chance of each single fault, given how it behaved before any work and which remedies mended it
 * or did not; the rest is something that is not in the model. Bayes' rule with the model's own figures, which stand before what is learned. Empty when no remedy was
 * done whose outcome is known.
 */
export function attribution(model: Model, item: Pick<Item, 'history'>): ReadonlyMap<string, number> {
  const known = byModel.get(model) ?? byHistory((each) => whatWasWrong(model, each));
  byModel.set(model, known);
  return known(item);
}

const byModel = new WeakMap<Model, (item: Pick<Item, 'history'>) => ReadonlyMap<string, number>>();

function whatWasWrong({ file }: Model, item: Pick<Item, 'history'>): ReadonlyMap<string, number> {
  const remedies = item.history.flatMap((entry) => (entry.kind === 'remedy' && entry.outcome !== 'not-tried-yet' ? [entry] : []));
  if (remedies.length === 0) return new Map();
  const weights = file.faults.map((fault) => {
    const byTrial = trialsBefore(item).reduce((product, trial) => product * trialChance(file, fault, trial), 1);
    return remedies.reduce((product, { remedy, outcome }) => {
      const mends = file.remedies.find(({ id }) => id === remedy)?.mends[fault.id] ?? 0;
      return product * (outcome === 'mended' ? mends : 1 - mends);
    }, fault.rate * byTrial);
  });
  const mended = remedies.some(({ outcome }) => outcome === 'mended');
  const unknown = mended ? 0 : file.unknown_rate * 0.5 ** trialsBefore(item).length;
  const all = weights.reduce((sum, weight) => sum + weight, unknown);
  return new Map(file.faults.map((fault, i) => [fault.id, all > 0 ? weights[i]! / all : 0]));
}

type Trial = Extract<Item['history'][number], { kind: 'trial' }>;

/** Trials without an accessory, up to the first remedy or transplant: the last of each function counts. */
function trialsBefore({ history }: Pick<Item, 'history'>): Trial[] {
  const change = history.findIndex(({ kind }) => kind === 'remedy' || kind === 'slot');
  const before = change < 0 ? history : history.slice(0, change);
  const trials = before.flatMap((entry) => (entry.kind === 'trial' && entry.with.length === 0 ? [entry] : []));
  return [...new Map(trials.map((trial) => [trial.function, trial])).values()];
}

function trialChance(file: ModelFile, fault: Fault, trial: Trial): number {
  const needs = file.functions.find(({ id }) => id === trial.function)?.needs ?? [];
  if (needs.some((need) => need === fault.block)) return Math.max(STRAY, behaviourOf(fault)[trial.outcome]);
  return trial.outcome === 'works' ? 1 - STRAY : STRAY / 2;
}
