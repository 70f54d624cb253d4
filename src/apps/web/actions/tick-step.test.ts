import { describe, expect, it } from 'vitest';
import { smallModels } from '../../../bench/testing/small-model.ts';
import { kindsOf } from './testing/recordable.ts';
import { tickStep } from './tick-step.ts';

const { file } = smallModels().get('lamp-1')!;
const tick = (step: string, count: number | null, foreign = 0) =>
  tickStep(file, { itemId: 'lamp-a', step, way: 'in', minutes: 1.5, counted: count === null ? null : { count, foreign } });

describe('a ticked step', () => {
  it('is one event where it has no fasteners or they were not counted', () => {
    expect(kindsOf(tick('board', 3))).toEqual(['step-done']);
    expect(kindsOf(tick('open-lamp', null))).toEqual(['step-done']);
    expect(tick('open-lamp', null).said).toBe('Open it');
  });

  it('brings its count, and findings for what is missing or of another kind', () => {
    expect(kindsOf(tick('open-lamp', 2))).toEqual(['step-done', 'fasteners-counted']);
    expect(kindsOf(tick('open-lamp', 1, 1))).toEqual(['step-done', 'fasteners-counted', 'finding-noted', 'finding-noted']);
  });
});
