import { expect, it } from 'vitest';
import { claimIn, claimText } from './claims.ts';
import { Stop } from './stop.ts';

it('reads what a seller says of a function, of a place, or of nothing', () => {
  expect(claimIn('sound=comes-and-goes')).toEqual({ about: 'function', function: 'sound', says: 'comes-and-goes' });
  expect(claimIn('shell:cracked')).toEqual({ about: 'place', place: 'shell', sees: 'cracked' });
  expect(claimIn('untested')).toEqual({ about: 'untested' });
});

it.each(['sound', 'sound=loud', 'shell:works', '=fails', ''])('refuses "%s" and shows how it is written', (text) => {
  expect(() => claimIn(text)).toThrowError(Stop);
  expect(() => claimIn(text)).toThrowError(/sound=fails/);
});

it.each(['sound=comes-and-goes', 'shell:cracked', 'untested'])('writes "%s" as it is typed', (text) => {
  expect(claimText(claimIn(text))).toBe(text);
});
