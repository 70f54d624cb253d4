import { describe, expect, it } from 'vitest';
import { evidenceOf, eventOf, type EvidenceSources } from './evidence.ts';
import { lifeOf } from './life.ts';
import { benchOf, bought, claims, did, moved, saw, tried } from './testing/bench-of.ts';
import { pocketModel } from './testing/pocket-model.ts';

const sources: EvidenceSources = { honesty: () => 0.6, incoming: (assembly) => ({ 'converter-dead': assembly === 'b1' ? 0.25 : 0 }) };

const of = (id: string, steps: Parameters<typeof benchOf>[0], until?: string) => {
  const state = benchOf(steps);
  const item = state.items.get(id)!;
  return evidenceOf(item, lifeOf(item, state.items), pocketModel(), sources, until);
};

describe('history as evidence', () => {
  it('keeps claims, trials, findings, readings and remedies in their order', () => {
    const evidence = of('u1', [
      ...bought('lot', 'marsh-lane', ['u1'], 'pocket-1', [claims('power', 'fails'), { about: 'untested' }]),
      tried('u1', 'power', 'works', ['good-battery', 'my-own-lead']),
      saw('u1', 'slot-contacts', 'dirty'),
      ['reading-taken', { item_id: 'u1', point: 'vsys', mode: 'volts', value: 3.1 }],
      did('u1', 'clean-contacts', 'not-tried-yet'),
    ]);
    expect(evidence).toMatchObject([
      { kind: 'claim', function: 'power', says: 'fails', honesty: 0.6 },
      { kind: 'trial', function: 'power', outcome: 'works', with: ['good-battery'] },
      { kind: 'finding', block: 'slot-contacts', sees: 'dirty' },
      { kind: 'reading', point: 'vsys', value: 3.1 },
      { kind: 'remedy', remedy: 'clean-contacts', outcome: 'not-tried-yet' },
    ]);
  });

  it('leaves out what the model has no word for, and readings in another mode', () => {
    const evidence = of('u1', [
      ...bought('lot', 'marsh-lane', ['u1']),
      tried('u1', 'radio', 'fails'),
      saw('u1', 'sticker', 'worn'),
      ['reading-taken', { item_id: 'u1', point: 'vsys', mode: 'ohms', value: 12 }],
      did('u1', 'kind-words', 'mended'),
    ]);
    expect(evidence).toEqual([]);
  });

  it('gives several claims of one event names of their own that lead back to it', () => {
    const evidence = of('u1', bought('lot', 'marsh-lane', ['u1'], 'pocket-1', [claims('power', 'fails'), claims('sound', 'fails')]));
    expect(new Set(evidence.map(({ id }) => id)).size).toBe(2);
    expect(new Set(evidence.map(({ id }) => eventOf(id))).size).toBe(1);
  });

  it('reads a finding at a test point as one at its block, and a missing assembly as an empty slot', () => {
    const evidence = of('u1', [...bought('lot', 'marsh-lane', ['u1']), saw('u1', 'vsys', 'burnt'), saw('u1', 'board', 'missing')]);
    expect(evidence).toMatchObject([
      { kind: 'finding', block: 'converter', sees: 'burnt' },
      { kind: 'transplant', incoming: null, blocks: ['switch', 'converter', 'processor', 'slot-contacts'] },
    ]);
  });

  it('counts steps of proof as trials until work undoes them', () => {
    const proved = [
      ...bought('lot', 'marsh-lane', ['u1']),
      ['proof-step-done', { item_id: 'u1', step: 'works.sound', outcome: 'fail' }],
    ] as const;
    expect(of('u1', [...proved])).toMatchObject([{ kind: 'trial', function: 'sound', outcome: 'fails', with: [] }, { kind: 'not-well' }]);
    expect(of('u1', [...proved, did('u1', 'new-speaker', 'mended')])).toMatchObject([{ kind: 'remedy' }]);
  });

  it('brings in what is believed of an assembly, and an empty slot as nothing', () => {
    const steps = [
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      moved('b1', 'board', 'u1', null),
      moved('b2', 'board', 'u2', null),
      moved('b1', 'board', null, 'u2'),
    ];
    expect(of('u1', steps)).toMatchObject([{ kind: 'transplant', incoming: null }]);
    expect(of('u2', steps)).toMatchObject([
      { kind: 'transplant', incoming: null },
      { kind: 'transplant', incoming: { 'converter-dead': 0.25 } },
    ]);
  });

  it('counts what was recorded on an assembly while it sat in the unit, and nothing from before or after', () => {
    const evidence = of('u2', [
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      moved('b1', 'board', 'u1', null),
      saw('b1', 'switch', 'dirty'),
      moved('b2', 'board', 'u2', null),
      moved('b1', 'board', null, 'u2'),
      did('b1', 'clean-switch', 'mended'),
      tried('u2', 'power', 'works'),
      moved('b1', 'board', 'u2', null),
      saw('b1', 'converter', 'burnt'),
    ]);
    expect(evidence.map((piece) => piece.kind)).toEqual(['transplant', 'transplant', 'remedy', 'trial', 'transplant']);
  });

  it('ends before the event that is asked for', () => {
    const steps = [...bought('lot', 'marsh-lane', ['u1']), tried('u1', 'power', 'fails'), tried('u1', 'sound', 'fails')];
    const all = of('u1', steps);
    expect(of('u1', steps, all[1]!.id)).toEqual([all[0]]);
  });
});
