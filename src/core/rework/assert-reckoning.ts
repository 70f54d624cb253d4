import type { Reckoning } from './reckoning.ts';
import { ReworkError } from './rework-error.ts';

/** The law of a calculator: a finite value within its range, and everything said that is needed to judge it. Throws `ReworkError` where it does not hold. */
export function assertReckoning({ value, low, high, unit, formula, source, range, why }: Reckoning): void {
  if (![value, low, high].every(Number.isFinite)) throw new ReworkError('bad-number', `not finite: ${low} to ${value} to ${high}`);
  if (!(low <= value && value <= high)) throw new ReworkError('bad-number', `${value} does not lie within ${low} to ${high}`);
  for (const [name, text] of Object.entries({ unit, formula, source, range, why }))
    if (text === '') throw new ReworkError('bad-number', `a reckoning without ${name}`);
}
