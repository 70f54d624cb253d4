import { describe, expect, it } from 'vitest';
import { claimsFor, functionSays, withFunction, withPlace, withUntested } from './claims.ts';

describe('claims', () => {
  it('hold at most one word for each function', () => {
    const twice = withFunction(withFunction([], 'sound', 'works'), 'sound', 'fails');
    expect(twice).toEqual([{ about: 'function', function: 'sound', says: 'fails' }]);
    expect(functionSays(twice, 'sound')).toBe('fails');
    expect(withFunction(twice, 'sound', 'not-said')).toEqual([]);
  });

  it('hold the same thing of a place once', () => {
    expect(withPlace(withPlace([], 'shell', 'cracked'), 'shell', 'cracked')).toHaveLength(1);
    expect(withPlace(withPlace([], 'shell', 'cracked'), 'shell', 'dirty')).toHaveLength(2);
  });

  it('are untested or not', () => {
    expect(withUntested(withUntested([], true), true)).toEqual([{ about: 'untested' }]);
    expect(withUntested([{ about: 'untested' }], false)).toEqual([]);
  });

  it('are cut to what another model knows', () => {
    const all = withUntested(withPlace(withFunction([], 'sound', 'works'), 'shell', 'cracked'), true);
    expect(claimsFor({ functions: [], blocks: [{ id: 'shell' }] }, all).map((claim) => claim.about)).toEqual(['place', 'untested']);
  });
});
