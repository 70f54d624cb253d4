import type { Claim, FindingKind, Outcome } from '../../../bench/events/index.ts';

/** What is claimed of a function, or that nothing is. */
export function functionSays(claims: readonly Claim[], id: string): Outcome | 'not-said' {
  for (const claim of claims) if (claim.about === 'function' && claim.function === id) return claim.says;
  return 'not-said';
}

/** The claims with this said of a function; at most one a function. */
export function withFunction(claims: readonly Claim[], id: string, says: Outcome | 'not-said'): Claim[] {
  const others = claims.filter((claim) => claim.about !== 'function' || claim.function !== id);
  return says === 'not-said' ? others : [...others, { about: 'function', function: id, says }];
}

/** The claims with this said of a place; the same thing twice is once. */
export function withPlace(claims: readonly Claim[], place: string, sees: FindingKind): Claim[] {
  const claim: Claim = { about: 'place', place, sees };
  return [...claims.filter((each) => claimKey(each) !== claimKey(claim)), claim];
}

export function withUntested(claims: readonly Claim[], untested: boolean): Claim[] {
  const others = claims.filter((claim) => claim.about !== 'untested');
  return untested ? [...others, { about: 'untested' }] : others;
}

/** One text per distinct claim. */
export function claimKey(claim: Claim): string {
  if (claim.about === 'function') return `function ${claim.function} ${claim.says}`;
  if (claim.about === 'place') return `place ${claim.place} ${claim.sees}`;
  return 'untested';
}

/** The claims that a model can understand: those of its functions and blocks. */
export function claimsFor(
  model: { readonly functions: readonly { readonly id: string }[]; readonly blocks: readonly { readonly id: string }[] },
  claims: readonly Claim[],
): Claim[] {
  return claims.filter((claim) => {
    if (claim.about === 'function') return model.functions.some((each) => each.id === claim.function);
    if (claim.about === 'place') return model.blocks.some((each) => each.id === claim.place);
    return true;
  });
}
