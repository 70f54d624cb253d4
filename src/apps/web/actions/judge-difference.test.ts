import { describe, expect, it } from 'vitest';
import type { DifferenceView } from '../../../bench/views/index.ts';
import { judgeDifference } from './judge-difference.ts';
import { setReference } from './set-reference.ts';
import { kindsOf, recordable } from './testing/recordable.ts';

const photo = 'ab'.repeat(32);
const question = { item_id: 'unit-1', photo, side: 'board-front' } as const;
const difference: DifferenceView = {
  rank: 3,
  outline: [
    [10, 10],
    [20, 10],
    [20, 20],
  ],
  outline_photo: [
    [0.01, 0.01],
    [0.02, 0.01],
    [0.02, 0.02],
  ],
  outline_mm: null,
  shows: 'stain',
  chance: 0.8123,
  part: 'C5',
  block: 'sound',
  verdict: null,
};
const real = { place: 'C5', placeName: 'C5', sees: 'corrosion', stage: 'open' } as const;

describe('what is said of a difference', () => {
  it('that is really there is a finding, too, of a board that is then out', () => {
    const gesture = judgeDifference(question, difference, 'real', real);
    expect(gesture.said).toBe('C5: corrosion');
    expect(recordable(gesture)).toMatchObject([
      { kind: 'opened-to', body: { stage: 'board-out' } },
      { kind: 'finding-noted', body: { item_id: 'unit-1', place: 'C5', sees: 'corrosion' } },
      { kind: 'difference-judged', body: { ...question, verdict: 'real', outline: difference.outline_photo, part: 'C5', chance: 0.8123 } },
    ]);
  });

  it('that is normal, or not sure, is no finding', () => {
    expect(kindsOf(judgeDifference(question, difference, 'normal'))).toEqual(['difference-judged']);
    const unsure = judgeDifference(question, { ...difference, part: null }, 'not-sure');
    expect(unsure.said).toBe('difference 3, stain, residue or corrosion: not sure');
    expect(recordable(unsure)[0]!.body).not.toHaveProperty('part');
  });
});

describe('a photo of a good board', () => {
  it('is compared with from now on, or not any more, or has its corners marked', () => {
    const choice = { modelId: 'tern-tn20', side: 'board-back', photo } as const;
    expect(setReference({ ...choice, use: true }).said).toBe('back of the board: one more reference');
    expect(recordable(setReference({ ...choice, use: false }))).toMatchObject([{ kind: 'reference-set', body: { photo, use: false } }]);
    const corners: [number, number][] = [
      [0.1, 0.7],
      [0.9, 0.7],
      [0.9, 0.1],
      [0.1, 0.1],
    ];
    expect(recordable(setReference({ ...choice, use: true, corners }))).toMatchObject([{ body: { corners } }]);
  });
});
