import { formatMinor } from '../../core/quantity/index.ts';
import type { End } from './ends.ts';

/** Closer than this share of the value of an hour, nothing is to be learned from a difference. Common practice, no source. */
const SAME = 0.25;

/**
 * What made the difference between what was thought and what came, in plain words, with what to do about it: the greatest of minutes, parts, and all the rest, which is
 * whether it ended as a working unit and what it sold for.
 */
export function lessonOf(end: End, currency: string): string {
  const { expected, minutes, partsMinor, cameMinor, hourMinor } = end;
  const byMinutes = ((expected.minutes - minutes) * hourMinor) / 60;
  const byParts = expected.spendMinor - partsMinor;
  const byEnd = cameMinor - expected.valueMinor - byMinutes - byParts;
  const most = Math.max(Math.abs(byMinutes), Math.abs(byParts), Math.abs(byEnd));
  if (most < SAME * hourMinor) return 'It went as it was thought.';
  if (most === Math.abs(byMinutes)) return minutesLesson(end);
  return most === Math.abs(byParts) ? partsLesson(end, currency) : endLesson(end, byEnd, currency);
}

const whole = (minutes: number): number => Math.round(minutes);

const minutesLesson = ({ expected, minutes }: End): string =>
  minutes > expected.minutes
    ? `It took ${whole(minutes)} min where ${whole(expected.minutes)} were reckoned with. Look which step ate them; where the trouble has to be searched for, set a limit after which it is left.`
    : `It took ${whole(minutes)} min where ${whole(expected.minutes)} were reckoned with. Your own times go into the next advice once they are noted.`;

function partsLesson({ expected, partsMinor }: End, currency: string): string {
  const [thought, spent] = [expected.spendMinor, partsMinor].map((minor) => `${formatMinor(Math.round(minor), currency)} ${currency}`);
  return partsMinor > expected.spendMinor
    ? `Parts came to ${spent} where ${thought} were reckoned with. Correct the prices of parts in the model, or buy them in bags.`
    : `Parts came to ${spent} where ${thought} were reckoned with: what is in the drawer is worth having.`;
}

function endLesson({ expected, worked, item }: End, byEnd: number, currency: string): string {
  const chance = `${Math.round(100 * expected.chance)} %`;
  const off = `${formatMinor(Math.round(Math.abs(byEnd)), currency)} ${currency}`;
  if (!worked && expected.chance >= 0.5)
    return `It was thought to end as a working unit with ${chance} and did not. That must happen at times; if the table above shows it happens more often than said, pay less for such ones.`;
  if (worked && expected.chance < 0.5)
    return `It was thought to end as a working unit with ${chance} only, and did. What mended it counts for the next one.`;
  return byEnd < 0
    ? `It brought ${off} less than reckoned with${item.returns > 0 ? ', with a return in between' : ''}. Write down more sales of this model, so that its price is known better.`
    : `It brought ${off} more than reckoned with. Write down more sales of this model: it may be worth paying more for.`;
}
