import { gainOf, type ModelData } from './problem.ts';
import { atLeast, mostOf, type Tails } from './tails.ts';

/** What is expected from completing units of one model, over the worth of their assemblies as leftovers. */
export interface ModelWorth {
  readonly gainMinor: number;
  readonly variance: number;
  /** Number of finished units. */
  readonly built: number;
  readonly builtVariance: number;
}

/**
 * The same with every chance raised to a power below 1, and none at nothing. As then no slot hangs so much on the others, a search that
 * starts on it sees that two things are worth buying together of which neither is worth it alone.
 */
export function softenedWorth(power: number): typeof modelWorth {
  return (model, pools, pairs, minuteMinor) =>
    modelWorth(
      model,
      pools.map((pool) => softened(pool, power)),
      pairs && softened(pairs, power),
      minuteMinor,
    );
}

/** What stands for no chance at all in softened worths, and for how many more things than there are. */
const FLOOR = 0.02;
const BEYOND = 2;

function softened({ sure, tail }: Tails, power: number): Tails {
  const raised = new Float64Array(tail.length + BEYOND);
  for (let i = 0; i < raised.length; i++) raised[i] = (FLOOR + (1 - FLOOR) * (tail[i] ?? 0)) ** power;
  return { sure, tail: raised };
}

/** Chances below this end the sum over units. */
const NEGLIGIBLE = 1e-12;

/**
 * Exact when hours do not run out: the sum over j of gain(j) · P(at least j of every slot work), slots being independent of each
 * other, plus the premium for each unit that keeps what came in it: min(finished, whole originals) of them can.
 * `pools` by slot; `pairs` counts the units whose original slots all work (null where no premium is paid).
 */
export function modelWorth(model: ModelData, pools: readonly Tails[], pairs: Tails | null, minuteMinor: number): ModelWorth {
  let most = Infinity;
  for (const pool of pools) most = Math.min(most, mostOf(pool));
  let [gainMinor, built, square, gainSquare, sumGain] = [0, 0, 0, 0, 0];
  const { original } = model;
  const isOwn = pools.map((_, s) => pairs !== null && original.includes(s));
  for (let j = 1; j <= most; j++) {
    let [rest, own] = [1, 1];
    for (let s = 0; s < pools.length; s++) {
      const chance = atLeast(pools[s]!, j);
      if (isOwn[s]) own *= chance;
      else rest *= chance;
    }
    const withPair = pairs ? rest * atLeast(pairs, j) : 0;
    const gain = gainOf(model, minuteMinor, j);
    const chance = gain >= 0 ? rest * own : withPair;
    const worth = gain >= 0 ? gain * chance + model.moreMinor * withPair : (gain + model.moreMinor) * withPair;
    if (worth <= 0 || chance < NEGLIGIBLE) break;
    gainMinor += worth;
    built += chance;
    square += (2 * j - 1) * chance;
    const each = worth / chance;
    gainSquare += chance * (each * each + 2 * each * sumGain);
    sumGain += each;
  }
  return {
    gainMinor,
    variance: Math.max(0, gainSquare - gainMinor * gainMinor),
    built,
    builtVariance: Math.max(0, square - built * built),
  };
}
