import { expect, it } from 'vitest';
import type { ItemFile } from '../views/index.ts';
import { criteriaFound } from './index.ts';

const step = (outcome: 'pass' | 'signed-off') => ({ outcome }) as ItemFile['proof']['steps'][number];
const test = (value: number, before_work: boolean) =>
  ({
    before_work,
    values: [
      { name: 'Dead dots', value, unit: 'dots', criterion: 'picture' },
      { name: 'Level', value: -3, unit: 'dB' },
    ],
  }) as unknown as ItemFile['tests'][number];
const slot = (holds: string) => ({ holds }) as ItemFile['slots'][number];

it('the last number of a test since the work counts, and those without a criterion do not', () => {
  const file = { tests: [test(9, true), test(3, false), test(2, false)], proof: { steps: [], ready: false }, slots: [] };
  expect(criteriaFound(file)).toEqual({ picture: 2 });
});

it('steps that were signed off and assemblies of others are counted', () => {
  const file = {
    tests: [],
    proof: { steps: [step('pass'), step('signed-off')], ready: true },
    slots: [slot('its-own'), slot('another'), slot('nothing')],
  };
  expect(criteriaFound(file)).toEqual({ function: 1, originality: 2 });
});
