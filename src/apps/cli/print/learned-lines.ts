import type { LearnedView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent, table } from './table.ts';

type Number = LearnedView['numbers'][number];

/** Each learned number before and now, with its limits, its jobs, and the name to reset it by. */
export function learnedLines({ numbers, half_life_days: halfLife, currency }: LearnedView): string[] {
  if (numbers.length === 0)
    return ['Nothing was learned yet: it begins with the first unit that leaves the bench, or the first sale that is known.'];
  const rows = numbers.map((number) => {
    const say = (value: number): string => inUnit(value, number.unit, currency);
    return [
      number.name,
      say(number.before),
      say(number.mean),
      `${say(number.low)} to ${say(number.high)}`,
      `${number.jobs.length}`,
      number.id,
    ];
  });
  return [
    ...table(['what', 'before', 'now', 'nine in ten', 'jobs', 'name'], rows, [1, 2, 4]),
    '',
    halfLife === null ? 'Old jobs do not fade.' : `A job counts half after ${halfLife} days.`,
  ];
}

function inUnit(value: number, unit: Number['unit'], currency: string): string {
  if (unit === 'share') return percent(value);
  return unit === 'minor' ? moneyText(Math.round(value), currency) : `${Number(value.toPrecision(3))} ${unit}`;
}
