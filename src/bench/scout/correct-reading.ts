import type { Claim } from '../events/index.ts';
import type { ListingReading, ReadClaim } from './listing-reading.ts';

/** What the person says to a reading: this does not count, or does; it means something else; or a claim that the text does not hold. */
export type ReadingCorrection =
  | { readonly does: 'count'; readonly key: string; readonly counts: boolean }
  | { readonly does: 'change'; readonly key: string; readonly claim: Claim }
  | { readonly does: 'add'; readonly claim: Claim; readonly unit: number | null };

/** The name of a claim within its reading: where it was read, of what, and what. */
export const keyOfReading = ({ claim, unit, span }: ReadClaim): string => JSON.stringify([unit, span.from, span.to, claim]);

export const BY_THE_PERSON = 'as you say';

/** A reading with the word of the person over it, in the order in which it was given. What is corrected counts and is in doubt no more. */
export function correctedReading(reading: ListingReading, corrections: readonly ReadingCorrection[]): ListingReading {
  let claims = reading.claims.map((read) => ({ key: keyOfReading(read), read }));
  for (const correction of corrections) {
    if (correction.does === 'add') claims = [...claims, added(correction.claim, correction.unit)];
    else claims = claims.map((each) => (each.key === correction.key ? { key: each.key, read: corrected(each.read, correction) } : each));
  }
  return { ...reading, claims: claims.map(({ read }) => read) };
}

function corrected(read: ReadClaim, correction: Exclude<ReadingCorrection, { does: 'add' }>): ReadClaim {
  if (correction.does === 'count') return { ...read, counts: correction.counts };
  return { ...read, claim: correction.claim, rule: BY_THE_PERSON, hedged: false, contradicted: false, counts: true };
}

function added(claim: Claim, unit: number | null): { readonly key: string; readonly read: ReadClaim } {
  const read = { claim, unit, span: { from: 0, to: 0 }, words: '', rule: BY_THE_PERSON, hedged: false, contradicted: false, counts: true };
  return { key: keyOfReading(read), read };
}

/** The claims that count for one unit of the lot (null: those said of all), each once: what a listing is weighed with. */
export function claimsThatCount({ claims }: ListingReading, unit: number | null): Claim[] {
  const counting = claims.filter((read) => read.counts && (read.unit === null || read.unit === unit));
  const byText = new Map(counting.map(({ claim }) => [JSON.stringify(claim), claim]));
  return [...byText.values()];
}
