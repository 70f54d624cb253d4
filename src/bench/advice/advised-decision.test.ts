import { describe, expect, it } from 'vitest';
import { createAdvisor } from './advisor.ts';
import { benchOf, bought, moved, saw, tried } from './testing/bench-of.ts';
import { pocketModel } from './testing/pocket-model.ts';
import { one, fileOf, fileWithoutChecks, deadProcessor, type Steps, goodUnit } from './testing/files.ts';

describe('the decision', () => {
  it('parts out a hopeless unit with good parts, and leaves one whose parts are worth nothing', () => {
    expect(fileOf('u1', one(...deadProcessor('u1'))).decision.road).toBe('part-out');
    const bare = one(
      ...deadProcessor('u1'),
      saw('u1', 'display', 'cracked'),
      moved('d1', 'display', 'u1', null),
      moved('b1', 'battery', 'u1', null),
      moved('s1', 'speaker', 'u1', null),
    );
    expect(fileOf('u1', bare).decision.road).toBe('leave');
  });

  it('values what is left of a unit: the price for parts in proportion to the assemblies that it still holds', () => {
    const roadOf = (steps: Steps, road: string) => fileOf('u1', one(...steps)).decision.options.find((option) => option.road === road)!;
    const gone = moved('b1', 'board', 'u1', null);
    const parts = [roadOf([], 'leave'), roadOf([gone], 'leave'), roadOf([saw('u1', 'board', 'missing')], 'leave')];
    const net = (price: number): number => Math.max(0, Math.round(price * 0.88 - 400));
    // Battery, board, display and speaker are worth 600, 1400, 1300 and 300; the price for parts is 1500.
    expect(parts.map(({ value_minor }) => value_minor)).toEqual([net(1500), net((1500 * 2200) / 3600), net((1500 * 2200) / 3600)]);
    expect(parts[1]!.why.join()).toContain('without its board it holds 61 % of that, 9.17 GBP');
    expect(roadOf([gone], 'part-out').why.join()).not.toContain('Board:');
    const back = roadOf([gone, moved('b1', 'board', null, 'u1')], 'leave');
    expect(back.value_minor).toBe(parts[0]!.value_minor);
  });

  it('values a unit of a model without slots as it is', () => {
    const plain = new Map([
      ['pocket-1', pocketModel({ slots: [], blocks: pocketModel().file.blocks.map(({ id, name }) => ({ id, name })) })],
    ]);
    const { decision } = createAdvisor(plain).fileParts(benchOf(one(), plain), 'u1');
    const whole = fileOf('u1', one()).decision;
    expect(decision.options[3]!.value_minor).toBe(whole.options[3]!.value_minor);
  });

  it('gives a hopeless board up for a good one in the drawer', () => {
    const steps: Steps = [
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      ...goodUnit('u2'),
      ...deadProcessor('u1'),
      moved('b2', 'board', 'u2', null),
    ];
    const { decision, advice } = fileWithoutChecks('u1', steps);
    expect(decision.road).toBe('transplant');
    expect(advice).toMatchObject({ do: 'transplant', id: 'road.transplant', remedy: { slot: 'board', donors: [{ item_id: 'b2' }] } });
    expect(advice.remedy!.cautions).toEqual([]);
  });

  it('names a donor once: by the unit it came out of, by the unit it sits in, or by its own name', () => {
    const two: Steps = [...bought('lot', 'marsh-lane', ['u1', 'u2']), ...deadProcessor('u1')];
    const taken: Steps = [
      ...two,
      ...goodUnit('u2'),
      ['transplant-done', { assembly_id: 'b2', name: 'Board of #2', slot: 'board', from_item: 'u2', to_item: null }],
    ];
    const loose = fileWithoutChecks('u1', taken).advice;
    expect(loose.headline).toBe('Give it the board that came out of #2');
    expect(loose.why.join(' ')).toContain('The board that came out of #2: ');
    const cracked = [
      saw('u2', 'display', 'cracked'),
      tried('u2', 'picture', 'fails'),
      tried('u2', 'sound', 'works'),
      tried('u2', 'power', 'works'),
    ];
    const unit = fileWithoutChecks('u1', [...two, ...cracked, ['advice-declined', { item_id: 'u2', advice: 'road.repair' }]]).advice;
    expect(unit.headline).toBe('Give it the board of Unit u2');
    const spare = { item_id: 'b9', name: 'Spare board', kind: 'assembly', model_id: 'pocket-1', slot: 'board', expected_value_minor: 1000 };
    const bare = [
      'lot-bought',
      { lot_id: 'spares', title: 'spares', seller: 'hill-foot', price_minor: 100, currency: 'GBP', items: [spare] },
    ] as const;
    const alone = fileWithoutChecks('u1', [...two, [...bare], ['item-received', { item_id: 'b9' }]]).advice;
    expect(alone.headline).toBe('Give it "Spare board" from the drawer');
  });

  it('weighs a donor by its own evidence: a board that failed elsewhere does not tempt', () => {
    const bad: Steps = [
      ...bought('lot', 'marsh-lane', ['u1', 'u2']),
      ...deadProcessor('u2'),
      ...deadProcessor('u1'),
      moved('b2', 'board', 'u2', null),
    ];
    expect(fileOf('u1', bad).decision.road).not.toBe('transplant');
  });

  it('says what was assumed when the model is priced in another currency', () => {
    const steps: Steps = [['bench-set', { currency: 'EUR' }], ...bought('lot', 'marsh-lane', ['u1'])];
    expect(fileOf('u1', steps).decision.why.join(' ')).toMatch(/Assumed: .*GBP .* as EUR/);
    expect(fileOf('u1', one()).decision.why.join(' ')).not.toContain('Assumed');
  });
});
