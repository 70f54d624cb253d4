import type { Limits, Wishes } from '../../core/planning/index.ts';
import type { BenchState } from '../state.ts';

/** What the person wants of the plan, with what is taken where nothing was said; the latter is common practice, no source. */
export interface PlanWishes {
  readonly hoursAWeek: number;
  readonly weeks: number;
  readonly moneyMinor: number;
  readonly riskShare: number;
  readonly dayMinor: number;
  readonly withinDays: number;
  /** Of a lot that is bought. */
  readonly lotPerHourMinor: number;
  readonly lotLossChance: number;
  readonly bidders: number;
  readonly errorShare: number;
  /** Wishes that were not said, in words. */
  readonly assumed: readonly string[];
}

const USUAL = { hoursAWeek: 10, weeks: 4, moneyMinor: 10_000, riskShare: 0, dayMinor: 5, withinDays: 30 } as const;
const USUAL_LOT = { lossChance: 0.25, bidders: 5, errorShare: 0.25 } as const;

/** An hour at a lot brings at least what an hour is worth, unless the person wants more. */
export function planWishes({ planning: { wishes: said }, settings }: Readonly<BenchState>): PlanWishes {
  const assumed = [
    said.hours_a_week === undefined ? `Assumed: ${USUAL.hoursAWeek} hours a week at the bench; set your own.` : '',
    said.money_minor === undefined ? 'Assumed: a limit on what may be spent on parts; set your own.' : '',
  ];
  return {
    hoursAWeek: said.hours_a_week ?? USUAL.hoursAWeek,
    weeks: said.weeks ?? USUAL.weeks,
    moneyMinor: said.money_minor ?? USUAL.moneyMinor,
    riskShare: said.risk_share ?? USUAL.riskShare,
    dayMinor: said.day_minor ?? USUAL.dayMinor,
    withinDays: said.within_days ?? USUAL.withinDays,
    lotPerHourMinor: said.lot_per_hour_minor ?? settings.hourValueMinor,
    lotLossChance: said.lot_loss_chance ?? USUAL_LOT.lossChance,
    bidders: said.bidders ?? USUAL_LOT.bidders,
    errorShare: said.error_share ?? USUAL_LOT.errorShare,
    assumed: assumed.filter((sentence) => sentence !== ''),
  };
}

export const limitsOf = ({ hoursAWeek, weeks, moneyMinor }: PlanWishes): Limits => ({
  moneyMinor,
  minutes: hoursAWeek * weeks * 60,
  minutesAWeek: hoursAWeek * 60,
});

export const coreWishes = ({ riskShare, dayMinor, withinDays }: PlanWishes, hourMinor: number): Wishes => ({
  hourMinor,
  riskShare,
  dayMinor,
  withinDays,
});
