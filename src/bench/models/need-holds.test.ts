import { describe, expect, it } from 'vitest';
import type { CircuitNeed } from './circuit-spec.ts';
import { needHolds, type CircuitLook } from './need-holds.ts';

const RAILS = { rails: { v33: 3.3 } };
const look = (values: Readonly<Record<string, number | null>>): CircuitLook => ({
  volts: (red, black, state) => values[`${red} ${black} ${state}`] ?? null,
  ohms: (red, black, state) => values[`${red} ${black} ${state}`] ?? null,
  amps: (supply, state) => values[`${supply} ${state}`] ?? null,
  partWell: (ref) => values[ref] === 1,
});

describe('needHolds', () => {
  it.each<[CircuitNeed, Record<string, number | null>, boolean]>([
    [{ rail: 'v33', within: 0.05 }, { 'v33 0 on': 3.2 }, true],
    [{ rail: 'v33', within: 0.05 }, { 'v33 0 on': 3.1 }, false],
    [{ rail: 'v33', within: 0.05, state: 'low' }, { 'v33 0 on': 3.3 }, false],
    [{ volts: 'a', min: 1, max: 2 }, { 'a 0 on': 1.5 }, true],
    [{ volts: 'a', to: 'b', max: 2 }, { 'a b on': 2.1 }, false],
    [{ volts: 'a', to: 'b', max: 2 }, { 'a b on': -5 }, true],
    [{ ohms: 'a', min: 4, max: 16 }, { 'a 0 off': 8 }, true],
    [{ ohms: 'a', min: 4 }, { 'a 0 off': null }, true],
    [{ ohms: 'a', max: 16 }, { 'a 0 off': null }, false],
    [{ ohms: 'a', max: 16, state: 'held' }, { 'a 0 held': 1 }, true],
    [{ amps: 'XBT1', max: -0.2 }, { 'XBT1 on': -0.4 }, true],
    [{ amps: 'XBT1', max: -0.2 }, { 'XBT1 on': 0 }, false],
    [{ amps: 'XBT1', max: -0.2 }, {}, false],
    [{ part: 'U1' }, { U1: 1 }, true],
    [{ part: 'U1' }, { U1: 0 }, false],
  ])('%j with %j: %s', (need, values, holds) => {
    expect(needHolds(need, 'on', RAILS, look(values))).toBe(holds);
  });
});
