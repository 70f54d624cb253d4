import { FindingKind, Outcome, type Claim } from '../../bench/events/index.ts';
import { misuse } from './stop.ts';

/** A claim as it is typed: `sound=fails` of a function, `shell:cracked` of a place, `untested`. */
export function claimIn(text: string): Claim {
  if (text === 'untested') return { about: 'untested' };
  const [, name, sign, value] = /^([^=:]+)([=:])(.+)$/.exec(text) ?? [];
  const says = sign === '=' ? Outcome.safeParse(value) : undefined;
  const sees = sign === ':' ? FindingKind.safeParse(value) : undefined;
  if (name && says?.success) return { about: 'function', function: name, says: says.data };
  if (name && sees?.success) return { about: 'place', place: name, sees: sees.data };
  throw misuse('bad-claim', { where: 'CLAIM', detail: text });
}

/** A claim as it would be typed. */
export function claimText(claim: Claim): string {
  if (claim.about === 'untested') return 'untested';
  return claim.about === 'function' ? `${claim.function}=${claim.says}` : `${claim.place}:${claim.sees}`;
}
