import { describe, expect, it } from 'vitest';
import { Id } from '../events/index.ts';
import { proofOf } from './proof.ts';
import { benchOf, bought, moved } from './testing/bench-of.ts';
import { pocketModel } from './testing/pocket-model.ts';

const proofAfter = (...steps: Parameters<typeof benchOf>[0]) =>
  proofOf(benchOf([...bought('lot', 'marsh-lane', ['u1']), ...steps]).items.get('u1')!, pocketModel());

const step = (id: string, outcome: string, reason = ''): Parameters<typeof benchOf>[0][number] => [
  'proof-step-done',
  { item_id: 'u1', step: id, outcome, reason },
];

describe('the proof of a unit', () => {
  it('asks for every function and for safety, each with how to do it', () => {
    const { steps, ready } = proofAfter();
    expect(steps.map(({ id }) => id)).toEqual([
      'works.power',
      'works.picture',
      'works.sound',
      'charges-safely',
      'no-hot-spots',
      'screws-back',
      'battery-door',
    ]);
    expect(steps.every(({ id, how }) => Id.safeParse(id).success && how.length > 20)).toBe(true);
    expect(steps.find(({ id }) => id === 'charges-safely')!.cautions).toEqual(['lithium-cell']);
    expect(steps.find(({ id }) => id === 'screws-back')!.how).toContain('5');
    expect(ready).toBe(false);
  });

  it('is ready when each step is passed or signed off, and not when one failed', () => {
    const ids = proofAfter().steps.map(({ id }) => id);
    const passed = ids.map((id) => step(id, 'pass'));
    expect(proofAfter(...passed).ready).toBe(true);
    expect(proofAfter(...passed, step('battery-door', 'signed-off', 'none on this one')).ready).toBe(true);
    expect(proofAfter(...passed, step('works.sound', 'fail')).ready).toBe(false);
    expect(proofAfter(...passed.slice(1)).ready).toBe(false);
  });

  it('asks nothing of charging where there is no cell that is charged', () => {
    const alkaline = pocketModel({ cell: { volts: 1.5, chemistry: 'alkaline' } });
    const unit = benchOf(bought('lot', 'marsh-lane', ['u1'])).items.get('u1')!;
    expect(proofOf(unit, alkaline).steps.map(({ id }) => id)).not.toContain('charges-safely');
  });

  it('has no steps for an assembly by itself', () => {
    const state = benchOf([...bought('lot', 'marsh-lane', ['u1']), moved('b1', 'board', 'u1', null)]);
    expect(proofOf(state.items.get('b1')!, pocketModel()).steps).toEqual([]);
  });
});
