import { expect, it } from 'vitest';
import { componentsOf, faultUniverse, readNetlist } from '../circuit/index.ts';
import { netlistText } from './netlist-text.ts';
import { unknownLoadParts } from './unknown-load.ts';

const LOAD = { rail: 'v33', nominalV: 3.3, ampere: 0.03, ohm: 3000, spreads: { ampere: 1, ohm: 1 } };

it('an unknown load is one component of a netlist, of which only what it does to its rail is thought of', () => {
  const text = netlistText({ title: 'a rail', temperatureK: 300.15, parts: [...unknownLoadParts(LOAD, 1)] });
  const read = readNetlist(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  expect(componentsOf(read.netlist).map(({ ref, role, nets }) => [ref, role, nets])).toEqual([['rest1', 'region', ['0']]]);
  expect(faultUniverse(read.netlist).map(({ id }) => id)).toEqual(['rest1:supply-shorted', 'rest1:leaky']);
});

it('an unknown load draws something', () => {
  expect(() => unknownLoadParts({ ...LOAD, ampere: 0 }, 1)).toThrow('draws 0 A');
});
