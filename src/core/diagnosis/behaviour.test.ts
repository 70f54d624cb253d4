import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { behavioursOf, SLIP } from './behaviour.ts';
import type { Behaviour, DeviceModel } from './model.ts';
import { stateSpace } from './state-space.ts';
import { SMALL_PLAYER } from './testing/small-player.ts';

const WAYS: readonly Behaviour[] = ['works', 'comes-and-goes', 'fails'];
const BLOCKS = SMALL_PLAYER.faults.map(({ block }) => block);

/** Written apart from the engine: every way in which all faults of a set may behave, with blocks, needs and function as the worst of the best. */
function byHand(model: DeviceModel, faults: readonly number[], good: readonly string[], absent: readonly string[]): number[] {
  const chances = [0, 0, 0];
  const ways = 3 ** faults.length;
  for (let code = 0; code < ways; code++) {
    let chance = 1;
    const bad = new Map<string, number>(absent.map((block) => [block, 2]));
    faults.forEach((fault, i) => {
      const way = Math.floor(code / 3 ** i) % 3;
      const { block, behaves } = model.faults[fault]!;
      chance *= behaves[WAYS[way]!];
      bad.set(block, Math.max(bad.get(block) ?? 0, way));
    });
    for (const block of good) bad.set(block, 0);
    const need = model.functions[0]!.needs.map((blocks) => Math.min(...blocks.map((block) => bad.get(block) ?? 0)));
    chances[Math.max(...need)]! += chance;
  }
  return chances;
}

describe('how a function behaves', () => {
  it('is what adding up all behaviours of the faults gives, for any needs, accessory and empty slots', () => {
    const needs = fc.array(fc.array(fc.constantFrom(...BLOCKS), { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(needs, fc.boolean(), fc.subarray(BLOCKS), fc.boolean(), (lists, aided, absent, someAbsent) => {
        const gone = someAbsent ? absent : [];
        const model = { ...SMALL_PLAYER, functions: [{ id: 'f', needs: lists }] };
        const space = stateSpace(model);
        const behaviours = behavioursOf(model, space, 'f', aided ? ['good-cell'] : [], new Set(gone));
        space.members.forEach((faults, state) => {
          if (state === space.unknown) return;
          const wanted = byHand(model, faults, aided ? ['cell'] : [], gone);
          WAYS.forEach((way, i) => expect(behaviours[way][state]).toBeCloseTo((1 - SLIP) * wanted[i]! + SLIP / 3, 12));
        });
      }),
      { numRuns: 300 },
    );
  });
});
