import type { Body } from '../events/index.ts';
import type { LogWords } from '../log-words.ts';
import { FIND_FIRST } from './plan-slots.ts';

type Part = readonly [value: number | undefined, said: (value: number) => string];

/** What an event sets of the wishes for the plan, one clause each. */
export function wishesSaid(words: LogWords, body: Body<'plan-set'>): string[] {
  const percent = (share: number): string => `${Math.round(share * 100)} %`;
  const parts: readonly Part[] = [
    [body.hours_a_week, (hours) => `${hours} hours a week`],
    [body.weeks, (weeks) => `for ${weeks} weeks`],
    [body.money_minor, (minor) => `at most ${words.money(minor)} for parts`],
    [body.risk_share, (share) => `${percent(share)} of the weight on the worst tenth`],
    [body.day_minor, (minor) => `a day of waiting costs ${words.money(minor)}`],
    [body.within_days, (days) => `orders within ${days} days`],
    [body.lot_per_hour_minor, (minor) => `an hour at a lot brings ${words.money(minor)}`],
    [body.lot_loss_chance, (share) => `a loss on a lot ${percent(share)} of the time at most`],
    [body.bidders, (count) => `${count} bidders`],
    [body.error_share, (share) => `worth of a lot judged to ${percent(share)}`],
  ];
  return parts.flatMap(([value, said]) => (value === undefined ? [] : [said(value)]));
}

const DOES = { open: 'work on it', 'as-is': 'sell it as it is', keep: 'leave it alone', 'as-planned': 'as planned' } as const;

/** What the person decided for an item, in the middle of a sentence. */
export function choiceSaid(words: LogWords, { item_id: item, does, slot, remedy }: Body<'plan-chosen'>): string {
  if (does !== undefined) return DOES[does];
  const place = words.named(item, 'slots', slot ?? '');
  if (!remedy) return `leave ${place} as it is`;
  if (remedy === FIND_FIRST) return `find the trouble first in ${place}`;
  const steps = remedy.split('+').map((step) => words.named(item, 'remedies', step));
  return `${steps.join(', then ')} for ${place}`;
}
