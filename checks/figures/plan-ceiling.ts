import { randomStream } from '../../src/core/numeric/index.ts';
import {
  baseOf,
  ceilingOf,
  lotStates,
  problemOf,
  searchPlan,
  type Base,
  type CeilingWishes,
  type LotState,
} from '../../src/core/planning/index.ts';
import { randomPile } from '../planning/random-pile.ts';
import { round, type Figure, type Progress } from './figure.ts';

const LOTS = 500;
const PILES = 10;
const UNITS = 20;
/** States that a ceiling is reckoned from, and further ones that the lot may turn out to be in, each with other guesses of the bidders. */
const STATES = 19;
const TRUTHS = 8;
const BIDDERS = 4;
const ERROR_SHARE = 0.2;
const LOSS_CHANCE = 0.2;
const PER_HOUR_MINOR = 2000;

interface Bought {
  readonly lost: boolean;
  readonly earnedMinor: number;
  readonly hours: number;
}

/**
 * Lots bought at their ceiling price by the highest of four bidders whose guesses err by up to a fifth of the lot's mean worth, ours
 * being the highest: then what they were truly worth to the pile, work done, against what was wished for.
 */
export function ceilingFigures(progress: Progress): Figure[] {
  const byLoss: Bought[] = [];
  const both: Bought[] = [];
  for (let p = 0; p < PILES; p++) {
    progress(`ceiling prices of lots, pile ${p + 1} of ${PILES}`);
    const base = baseFor(`ceiling ${p}`);
    for (let i = 0; i < LOTS / PILES; i++) {
      const bought = buy(base, `${p} ${i}`);
      byLoss.push(...bought.byLoss);
      both.push(...bought.both);
    }
  }
  const met = byLoss.filter(({ lost }) => lost).length / byLoss.length;
  const hours = both.reduce((sum, bought) => sum + bought.hours, 0);
  const perHour = both.reduce((sum, bought) => sum + bought.earnedMinor, 0) / hours;
  const setting = `${LOTS} lots of one to three units to ${PILES} piles of ${UNITS}, ${BIDDERS} bidders off by up to ${100 * ERROR_SHARE} %, ${STATES} sampled states each, bought in ${TRUTHS} further ones`;
  return [
    {
      figure: 'plan.ceiling_loss_gap',
      value: round(Math.abs(met - LOSS_CHANCE)),
      unit: '',
      target: '≤ 0.03',
      reference: `${setting}; lost on ${round(met)} of them at the price for ${LOSS_CHANCE}`,
    },
    {
      figure: 'plan.ceiling_hourly',
      value: round(perHour / PER_HOUR_MINOR),
      unit: '×',
      target: '≥ 1',
      reference: `the same lots at the lower of both ceilings where that is above nothing (${both.length} of ${byLoss.length}), ${round(hours)} further hours, ${PER_HOUR_MINOR} minor units an hour wanted`,
    },
  ];
}

function baseFor(seed: string): Base {
  const problem = problemOf(randomPile({ units: UNITS, seed }));
  const choice = searchPlan(problem, { seed, prices: { minuteMinor: 0, money: 0 }, shouldStop: () => false });
  return baseOf({ problem, choice });
}

/** What happened at the ceiling for the chance of loss alone, and at the ceiling for both wishes where that is above nothing. */
function buy(base: Base, seed: string): { byLoss: Bought[]; both: Bought[] } {
  const random = randomStream(`lot of ${seed}`);
  const { models, wishes: person } = base.problem.pile;
  const stock = randomPile({ units: 12, seed: `lots ${seed}` }).items;
  const lot = stock
    .slice(0, 1 + Math.floor(random() * 3))
    .map((item, i) => ({ ...item, id: `lot ${i}`, model: models[Math.floor(random() * models.length)]!.id }));
  const states = lotStates(base, lot, seed, STATES + TRUTHS);
  const guessed = states.slice(0, STATES);
  const errorMinor = ERROR_SHARE * Math.max(1, average(guessed.map(({ expectedMinor }) => expectedMinor)));
  const wishes: CeilingWishes = { lossChance: LOSS_CHANCE, perHourMinor: PER_HOUR_MINOR, errorMinor, bidders: BIDDERS };
  const found = states.slice(STATES).map((truth, i) => {
    const ours = Math.max(...Array.from({ length: BIDDERS }, () => errorMinor * (2 * random() - 1)));
    const seen = guessed.map((state): LotState => ({
      ...state,
      worthMinor: state.worthMinor + ours,
      expectedMinor: state.expectedMinor + ours,
    }));
    const { byLossMinor, ceilingMinor } = ceilingOf(seen, wishes, person.hourMinor, `${seed} ${i}`);
    const hours = truth.minutes / 60;
    const at = (priceMinor: number): Bought => ({
      lost: truth.worthMinor < priceMinor,
      earnedMinor: truth.worthMinor - priceMinor + hours * person.hourMinor,
      hours,
    });
    return { byLoss: at(byLossMinor), both: ceilingMinor > 0 ? [at(ceilingMinor)] : [] };
  });
  return { byLoss: found.map((each) => each.byLoss), both: found.flatMap((each) => each.both) };
}

const average = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
