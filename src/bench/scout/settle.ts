import type { Claim } from '../events/index.ts';
import type { ReadClaim, Remark } from './listing-reading.ts';

type Found = Omit<ReadClaim, 'contradicted' | 'counts'>;
const WHOLE = 'everything works';

/**
 * Claims of one text beside each other: what is said of everything gives way to what is said of one thing, the same thing twice is once, "as is" with nothing else is untested, and opposites are marked. Of opposites only
 * the worse counts; doubtful praise does not count, a doubtful fault does.
 */
export function settle(found: readonly Found[], remarks: readonly Remark[]): { claims: ReadClaim[]; remarks: Remark[] } {
  const narrowed = found.filter((each) => each.rule !== WHOLE || !found.some((other) => other.rule !== WHOLE && sameSubject(each, other)));
  const refined = narrowed.filter((each) => !narrowed.some((other) => isRefined(each, other)));
  const once = refined.filter((each, i) => !refined.slice(0, i).some((other) => key(other) === key(each)));
  const asIs = remarks.find(({ code }) => code === 'as-is');
  const said = once.some(({ claim }) => claim.about !== 'place') || !asIs ? once : [...once, untestedFrom(asIs)];
  const claims = said.map((each) => {
    const contradicted = said.some((other) => opposes(each, other));
    return { ...each, contradicted, counts: !isPraise(each.claim) || !(each.hedged || contradicted) };
  });
  return { claims, remarks: [...remarks] };
}

const untestedFrom = ({ span, words }: Remark): Found => ({
  claim: { about: 'untested' },
  unit: null,
  span,
  words,
  rule: 'as is',
  hedged: false,
});

const isPraise = (claim: Claim): boolean => claim.about === 'function' && claim.says === 'works';

const key = ({ claim, unit }: Found): string => JSON.stringify([unit, claim]);

const sameUnit = (a: Found, b: Found): boolean => a.unit === null || b.unit === null || a.unit === b.unit;

function sameSubject(a: Found, b: Found): boolean {
  return sameUnit(a, b) && a.claim.about === 'function' && b.claim.about === 'function' && a.claim.function === b.claim.function;
}

/** "It works but comes and goes": the second says it better. So does what is sure better than what is in doubt. */
function isRefined(each: Found, other: Found): boolean {
  if (each === other || !sameSubject(each, other) || each.claim.about !== 'function' || other.claim.about !== 'function') return false;
  if (each.hedged !== other.hedged) return each.hedged;
  return other.claim.says === 'comes-and-goes' && each.claim.says !== 'comes-and-goes';
}

function opposes(a: Found, b: Found): boolean {
  if (a === b || !sameUnit(a, b) || a.hedged || b.hedged) return false;
  if (a.claim.about === 'untested' || b.claim.about === 'untested') return isPraise(a.claim) || isPraise(b.claim);
  return sameSubject(a, b) && a.claim.about === 'function' && b.claim.about === 'function' && a.claim.says !== b.claim.says;
}
