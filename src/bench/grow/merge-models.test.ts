import { expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { factsOf } from './facts-of.ts';
import { factsToTake, mergeModels } from './merge-models.ts';
import { ModelBundle, photosOf } from '../events/index.ts';
import { modelsWithGrown } from './models-with-grown.ts';
import { bundleOf, leavingWith } from './share-model.ts';

const shelf = smallModels();
const G = { model_id: 'lamp-g' };
const begun: Step = ['model-begun', { ...G, name: 'Grown lamp', currency: 'GBP', from: { copy_of: 'lamp-1' } }];
const fact = (id: string, field: string | undefined, value: unknown, section = 'faults'): Step => [
  'model-fact-set',
  { ...G, section, id, ...(field ? { field } : {}), value },
];
const part = (ref: string, x_mm: number): Step => [
  'model-parts-placed',
  { ...G, parts: [{ ref, kind: 'resistor', side: 'front', x_mm, y_mm: 1 }] },
];
const join = (pins: string[], joined: boolean): Step => ['model-pins-joined', { ...G, pins, joined }];
const taught = (value: number, more: object = {}): Step => [
  'model-reading-taught',
  { ...G, board: 'good-1', point: 'cell-v', mode: 'volts', value, ...more },
];
const stateOf = (...steps: Step[]) => foldLog(testLog(begun, ...steps), shelf);
const factsFrom = (...steps: Step[]) => factsOf(stateOf(...steps).grown.get('lamp-g')!);
const giver = { author: 'Ada of Marsh Lane', licence: 'CC BY 4.0' };

test('what both say is agreed, what only they say is fresh, what differs is a conflict with both sides', () => {
  const ours = factsFrom(fact('bulb-open', 'rate', 0.4), fact('switch-dirty', 'rate', 0.2), part('R1', 10), part('R2', 20));
  const theirs = factsFrom(
    fact('bulb-open', 'rate', 0.4),
    fact('switch-dirty', 'rate', 0.3),
    part('R1', 10.3),
    part('R2', 22),
    part('R3', 5),
  );
  const merge = mergeModels(ours, theirs, 'Ada');
  expect(merge.agreed).toBe(2);
  expect(merge.fresh.map(({ body }) => body)).toMatchObject([{ parts: [{ ref: 'R3' }] }]);
  expect(merge.conflicts.map(({ place }) => place)).toEqual(['faults switch-dirty rate', 'part R2']);
  expect(merge.conflicts[0]).toMatchObject({ ours: { body: { value: 0.2 } }, theirs: { body: { value: 0.3 } } });
});

test('a whole entry is held against one of its fields', () => {
  const whole = fact('lens', undefined, { name: 'Lens' }, 'blocks');
  expect(mergeModels(factsFrom(whole), factsFrom(whole, fact('lens', 'name', 'Glass', 'blocks')), 'Ada').conflicts).toHaveLength(1);
  expect(mergeModels(factsFrom(whole), factsFrom(fact('lens', 'name', 'Lens', 'blocks')), 'Ada')).toMatchObject({
    agreed: 1,
    conflicts: [],
  });
});

test('pins that one measured as joined and the other as not are a conflict; a part of a net that is known is agreed', () => {
  const ours = factsFrom(join(['R1.1', 'U1.3', 'C4.1'], true));
  expect(mergeModels(ours, factsFrom(join(['U1.3', 'C4.1'], false)), 'Ada').conflicts).toHaveLength(1);
  expect(mergeModels(ours, factsFrom(join(['U1.3', 'C4.1'], true)), 'Ada').agreed).toBe(1);
  expect(mergeModels(ours, factsFrom(join(['U1.3', 'R9.1'], true)), 'Ada').fresh).toHaveLength(1);
});

test('boards of two people are two boards, and the same bundle a second time adds nothing', () => {
  const ours = stateOf(taught(3));
  const bundle = bundleOf(stateOf(taught(3.2)).grown.get('lamp-g')!, giver);
  const facts = factsToTake(mergeModels(factsOf(ours.grown.get('lamp-g')!), bundle.facts, bundle.author), () => false);
  const taken: Step = ['model-taken-in', { ...G, from_author: bundle.author, licence: bundle.licence, facts }];
  const after = stateOf(taught(3), taken);
  const model = modelsWithGrown(shelf, () => after).get('lamp-g')!;
  expect(model.readings.map(({ board, value }) => [board, value])).toEqual([
    ['good-1', 3],
    ['Ada of Marsh Lane: good-1', 3.2],
  ]);
  const again = mergeModels(factsOf(after.grown.get('lamp-g')!), bundle.facts, bundle.author);
  expect(again).toMatchObject({ agreed: 1, fresh: [], conflicts: [] });
});

test('only what was chosen of the conflicts comes in', () => {
  const merge = mergeModels(
    factsFrom(fact('bulb-open', 'rate', 0.4), part('R1', 1)),
    factsFrom(fact('bulb-open', 'rate', 0.5), part('R1', 9)),
    'Ada',
  );
  const taken = factsToTake(merge, ({ place }) => place === 'part R1');
  expect(taken.map(({ kind }) => kind)).toEqual(['model-parts-placed']);
});

test('a bundle holds the last word on each place, and no name of an item', () => {
  const lamp: Step = [
    'lot-bought',
    {
      lot_id: 'l',
      title: 't',
      seller: 'secret seller',
      price_minor: 1,
      currency: 'GBP',
      items: [{ item_id: 'unit-77', name: 'U', model_id: 'lamp-1', expected_value_minor: 1 }],
    },
  ];
  const state = stateOf(lamp, fact('bulb-open', 'rate', 0.4), fact('bulb-open', 'rate', 0.6), taught(3, { item_id: 'unit-77' }));
  const bundle = bundleOf(state.grown.get('lamp-g')!, giver);
  expect(ModelBundle.parse(bundle)).toEqual(bundle);
  expect(JSON.stringify(bundle)).not.toMatch(/0\.4|unit-77|secret/);
});

test('everything that leaves is listed, a line each, with the photos', () => {
  const photo = 'ab'.repeat(32);
  const state = stateOf(fact('about', undefined, 'Bought of Bob.', 'head'), ['model-photo-set', { ...G, side: 'front', photo }], taught(3));
  const bundle = bundleOf(state.grown.get('lamp-g')!, giver);
  const lines = leavingWith(bundle);
  expect(lines).toEqual([
    'The name of the model: Grown lamp (lamp-g)',
    'Your name in it: Ada of Marsh Lane',
    'The licence: CC BY 4.0',
    'What it was begun from: a copy of lamp-1',
    'about: Bought of Bob.',
    'photo of the front: a picture',
    'cell-v of the board "good-1": 3 V',
  ]);
  expect(photosOf(bundle)).toEqual([photo]);
});

test('a copy of a grown model goes out whole, with what it inherits of that one, and comes in as the same model', () => {
  const copy: Step = ['model-begun', { model_id: 'lamp-h', name: 'Copy', currency: 'GBP', from: { copy_of: 'lamp-g' } }];
  const step: Step = [
    'model-step-recorded',
    {
      ...G,
      step: { id: 'door', name: 'Door off' },
      fasteners: { id: 'door-screws', name: 'Screws', drive: 'Cross', length_mm: 4, count: 2 },
      photo: 'cd'.repeat(32),
      at: [[1, 2]],
    },
  ];
  const state = stateOf(fact('bulb-open', 'rate', 0.4), step, taught(3), copy, [
    'model-fact-set',
    { model_id: 'lamp-h', section: 'head', id: 'about', value: 'Of my own.' },
  ]);
  const bundle = bundleOf(state.grown.get('lamp-h')!, giver);
  expect(bundle.from).toEqual({ copy_of: 'lamp-1' });
  const there = foldLog(
    testLog(
      ['model-begun', { model_id: 'lamp-h', name: bundle.name, currency: 'GBP', from: bundle.from }],
      ['model-taken-in', { model_id: 'lamp-h', from_author: bundle.author, facts: bundle.facts }],
    ),
    shelf,
  );
  const modelHere = modelsWithGrown(shelf, () => state).get('lamp-h')!;
  const modelThere = modelsWithGrown(shelf, () => there).get('lamp-h')!;
  expect(modelThere.file).toEqual(modelHere.file);
  expect(modelThere.readings).toEqual(modelHere.readings);
  expect(there.grown.get('lamp-h')!.stepPhotos).toMatchObject([{ step: 'door', places: [[1, 2]] }]);
});
