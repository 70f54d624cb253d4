import fc from 'fast-check';
import { expect, it } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { testLog, type Step } from '../testing/events.ts';
import { PileView } from '../views/index.ts';
import { rowOf } from '../row-of.ts';
import { createAdvisor } from './advisor.ts';
import { assertSound } from './testing/assert-sound.ts';
import { bought, claims } from './testing/bench-of.ts';
import { pocketModels } from './testing/pocket-model.ts';

type Steps = readonly Step[];

const models = pocketModels();
const { file } = models.get('pocket-1')!;
const unit = fc.constantFrom('u1', 'u2', 'v1');
const nameOf = (list: readonly { readonly id: string }[]) => fc.constantFrom(...list.map(({ id }) => id));

const step: fc.Arbitrary<Steps[number]> = fc.oneof(
  fc
    .tuple(unit, nameOf(file.functions), fc.constantFrom('works', 'fails', 'comes-and-goes'), fc.subarray(['good-battery']))
    .map(([item_id, fn, outcome, aids]): Steps[number] => ['trial-done', { item_id, function: fn, outcome, with: aids }]),
  fc
    .tuple(unit, nameOf([...file.blocks, ...file.slots]), fc.constantFrom('nothing-wrong', 'missing', 'dirty', 'cracked', 'burnt'))
    .map(([item_id, place, sees]): Steps[number] => ['finding-noted', { item_id, place, sees }]),
  fc
    .tuple(unit, fc.option(fc.double({ min: -1, max: 20, noNaN: true })))
    .map(([item_id, value]): Steps[number] => ['reading-taken', { item_id, point: 'vsys', mode: 'volts', value }]),
  fc
    .tuple(unit, nameOf(file.remedies), fc.constantFrom('mended', 'not-mended', 'made-worse', 'not-tried-yet'))
    .map(([item_id, remedy, outcome]): Steps[number] => ['remedy-done', { item_id, remedy, minutes: 5, outcome }]),
  fc
    .tuple(unit, nameOf(file.slots), fc.constantFrom('u1', 'u2', 'v1', null))
    .map(([from, slot, to]): Steps[number] => [
      'transplant-done',
      { assembly_id: `${slot}-of-${from}`, slot, from_item: from, to_item: to },
    ]),
  fc
    .tuple(nameOf(file.slots), unit, unit)
    .map(([slot, of, to]): Steps[number] => ['transplant-done', { assembly_id: `${slot}-of-${of}`, slot, from_item: null, to_item: to }]),
  fc
    .tuple(unit, fc.constantFrom('closed', 'open', 'board-out'))
    .map(([item_id, stage]): Steps[number] => ['opened-to', { item_id, stage }]),
  fc
    .tuple(unit, fc.constantFrom('check.try-power', 'remedy.new-battery', 'road.part-out', 'road.leave', 'road.repair', 'road.transplant'))
    .map(([item_id, advice]): Steps[number] => ['advice-declined', { item_id, advice }]),
);

const start: Steps = [
  ...bought('lot-u', 'marsh-lane', ['u1', 'u2'], 'pocket-1', [claims('power', 'works'), claims('picture', 'fails')]),
  ...bought('lot-v', 'hill-foot', ['v1'], 'pocket-2'),
];

it('advice obeys its laws after any history, for units and assemblies, and asked twice it is the same', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
      const state = foldLog(testLog(...start, ...steps), models);
      const [first, second] = [createAdvisor(models), createAdvisor(models)];
      const pile = PileView.parse(first.pile(state, (item) => rowOf(state, item)));
      expect(Number.isFinite(pile.value_minor)).toBe(true);
      for (const id of state.items.keys()) {
        const parts = first.fileParts(state, id);
        assertSound(parts);
        expect(second.fileParts(state, id)).toEqual(parts);
        const works = first.worksChance(state, id);
        expect(works >= 0 && works <= 1).toBe(true);
      }
    }),
    { numRuns: 40 },
  );
});
