import { gainOf, type Problem, type Thing } from './problem.ts';

/** How much of a finished unit one slot decides, when nothing else is known yet. */
const SLOT_SHARE = 0.5;

const promising = new WeakMap<Problem, Float64Array>();

/** What opening a unit promises, to look at the best first: working slots at half a finished unit in all, less what it costs and brings unopened. */
export function promiseOf(problem: Problem, u: number): number {
  let all = promising.get(problem);
  if (!all) {
    all = Float64Array.from(problem.units, ({ model, things, asIsMinor, openMinutes }) => {
      const { soldMinor, slots } = problem.models[model]!;
      return things.reduce(
        (sum, t) => {
          const { chance, costMinor, minutes } = problem.things[t]!.options[likelyOption(problem, t)]!;
          return sum + (chance * soldMinor) / slots.length - costMinor - minutes * problem.minuteMinor;
        },
        -asIsMinor - openMinutes * problem.minuteMinor,
      );
    });
    promising.set(problem, all);
  }
  return all[u]!;
}

const likely = new WeakMap<Problem, Uint8Array>();

/** The option of a thing that looks best by itself, if half of a finished unit hangs on it; parts at their lowest price. Reckoned once a problem. */
export function likelyOption(problem: Problem, t: number): number {
  let options = likely.get(problem);
  if (!options) likely.set(problem, (options = Uint8Array.from(problem.things, (thing) => bestByItself(problem, thing))));
  return options[t]!;
}

function bestByItself(problem: Problem, { model, options }: Thing): number {
  const stake = SLOT_SHARE * Math.max(0, gainOf(problem.models[model]!, problem.minuteMinor, 1));
  let [best, bestWorth] = [0, -Infinity];
  options.forEach(({ chance, costMinor, minutes, needs }, o) => {
    const parts = needs.reduce((sum, [part, n]) => sum + n * lowestPrice(problem, part), 0);
    const worth = chance * stake - costMinor - minutes * problem.minuteMinor - parts;
    if (worth > bestWorth) [best, bestWorth] = [o, worth];
  });
  return best;
}

function lowestPrice({ parts }: Problem, p: number): number {
  const { stock, keptMinor, offers } = parts[p]!;
  const prices = offers.map((offer) => offer?.unitMinor ?? Infinity);
  return stock > 0 ? keptMinor : Math.min(1e6, ...prices);
}
