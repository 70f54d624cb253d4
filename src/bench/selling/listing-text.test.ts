import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { listingText } from './index.ts';

const models = smallModels();
const lamp = models.get('lamp-1')!;
const text = (...steps: readonly Step[]) => {
  const state = foldLog(testLog(...oneLamp, ...steps), models);
  return listingText(state, lamp, state.items.get('lamp-a')!);
};
const pass = (step: string): Step => ['proof-step-done', { item_id: 'lamp-a', step, outcome: 'pass' }];

describe('the text of a listing', () => {
  test('claims nothing that no event bears out', () => {
    const { text: said, facts } = text();
    expect(said).not.toMatch(/working/);
    expect(said).toContain('Not tested: Power, Light.');
    expect(facts.map(({ text: fact }) => fact)).not.toContain('Tested and working: ');
  });

  test('says what was proved, with the events that prove it', () => {
    const { text: said, facts } = text(pass('works.power'));
    expect(said).toContain('Tested and working: Power.');
    expect(said).toContain('Not tested: Light.');
    expect(facts.find((fact) => fact.text.startsWith('Tested'))!.event_ids).toHaveLength(1);
  });

  test('says what is missing from the photo set, and what it weighs with packing where the model says what it weighs', () => {
    expect(text().photos_missing).toEqual(['front', 'back']);
    const photo: Step = ['photo-taken', { item_id: 'lamp-a', photo: 'a'.repeat(64), side: 'front' }];
    expect(text(photo).photos_missing).toEqual(['back']);
    expect(text().weight_g).toBeNull();
    const state = foldLog(testLog(...oneLamp), models);
    const heavy = { ...lamp, file: { ...lamp.file, weight_g: 300 } };
    expect(listingText(state, heavy, state.items.get('lamp-a')!).weight_g).toEqual({ unit: 300, packed: 450 });
  });

  test('names words of the template that claim something of every unit', () => {
    const own = (template: string): string[] => text(['sale-text-set', { template }]).own_claims;
    expect(own('{model}\n{works}\nPosted within two days.')).toEqual([]);
    expect(own('{model}, fully Working and like new')).toEqual(['working', 'like new']);
  });

  test('always says what was replaced and what does not pass, even where the own words have no place for it', () => {
    const plain: Step = ['sale-text-set', { template: 'A fine {model}!' }];
    const bulb: Step = ['remedy-done', { item_id: 'lamp-a', remedy: 'new-bulb', minutes: 5, outcome: 'mended' }];
    const signed: Step = [
      'proof-step-done',
      { item_id: 'lamp-a', step: 'works.light', outcome: 'signed-off', reason: 'flickers when cold' },
    ];
    const { text: said } = text(plain, bulb, signed);
    expect(said.split('\n')).toEqual(['A fine Pocket lamp!', 'Replaced: New bulb.', 'Does not pass: Light (flickers when cold).']);
  });

  test('names an assembly of another unit and one that is missing', () => {
    const lampB: Step = [
      'lot-bought',
      {
        lot_id: 'lot-b',
        title: 'B',
        seller: 'S',
        price_minor: 5,
        currency: 'GBP',
        items: [{ item_id: 'lamp-b', name: 'B', model_id: 'lamp-1', expected_value_minor: 1 }],
      },
    ];
    const out: Step = ['transplant-done', { assembly_id: 'own', slot: 'board', from_item: 'lamp-a', to_item: null }];
    const other: Step = ['transplant-done', { assembly_id: 'other', slot: 'board', from_item: 'lamp-b', to_item: 'lamp-a' }];
    expect(text(out).text).toContain('Without: Board.');
    expect(text(lampB, out, other).text).toContain('Replaced: Board (of another one).');
  });
});
