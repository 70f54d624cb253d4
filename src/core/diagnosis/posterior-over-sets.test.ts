import { describe, expect, it } from 'vitest';
import { assertBelief, believe, DiagnosisError, marginals, posteriorOverSets } from './index.ts';
import { SMALL_PLAYER } from './testing/small-player.ts';

describe('a posterior over sets', () => {
  it('is the product of the factors, normalised', () => {
    const sets = [[], ['a'], ['b'], ['a', 'b']];
    const rate = (name: string, p: number) => (set: readonly string[]) => (set.includes(name) ? p : 1 - p);
    const alarm = (set: readonly string[]): number => (set.length > 0 ? 0.9 : 0.1);
    const weights = posteriorOverSets(sets, [rate('a', 0.2), rate('b', 0.5), alarm]);
    const total = 0.4 * 0.1 + (0.1 + 0.4 + 0.1) * 0.9;
    [0.04, 0.09, 0.36, 0.09].forEach((weight, i) => expect(weights[i]).toBeCloseTo(weight / total, 12));
    expect(marginals(sets, weights).get('a')).toBeCloseTo(0.18 / total, 12);
  });

  it('says when nothing is possible any more', () => {
    expect(() => posteriorOverSets([['a']], [() => 0])).toThrow(DiagnosisError);
  });
});

describe('the checker of beliefs', () => {
  const belief = believe(SMALL_PLAYER, []);

  it('passes what believe gives', () => expect(() => assertBelief(belief)).not.toThrow());

  it.each([
    ['a sum that is not one', { unknown: belief.unknown + 0.01 }],
    ['a marginal that its sets do not bear out', { marginal: new Map([...belief.marginal, ['cell-flat', 0.9]]) }],
    ['"none" that is not the empty set', { none: 0.5 }],
    ['a chance that is none', { marginal: new Map([['cell-flat', Number.NaN]]) }],
    ['sets out of order', { sets: belief.sets.toReversed() }],
    ['an odd chance above one', { odd: [{ evidenceId: 'x', chance: 1.5 }] }],
  ])('catches %s', (_, change) => {
    expect(() => assertBelief({ ...belief, ...change })).toThrow(DiagnosisError);
  });
});
