import { describe, expect, it } from 'vitest';
import { createAdvisor } from '../advice/index.ts';
import { benchOf, bought, claims, did, saw, tried } from '../advice/testing/bench-of.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import { claimsSettled, honestyFrom, HONESTY_BEFORE, learnHonesty } from './honesty.ts';

const settledBy = (...steps: Parameters<typeof benchOf>[0]) => {
  const state = benchOf([
    ...bought('lot', 'marsh-lane', ['u1'], 'pocket-1', [claims('power', 'works'), { about: 'place', place: 'display', sees: 'cracked' }]),
    ...steps,
  ]);
  return claimsSettled(state.items.get('u1')!).map(({ kind, right }) => [kind, right]);
};

describe('claims against facts', () => {
  it('counts a claim as right or wrong by the first trial or look', () => {
    expect(settledBy()).toEqual([]);
    expect(settledBy(tried('u1', 'power', 'works'))).toEqual([['works', true]]);
    expect(settledBy(tried('u1', 'power', 'comes-and-goes'), tried('u1', 'power', 'works'))).toEqual([['works', false]]);
    expect(settledBy(saw('u1', 'display', 'nothing-wrong'), tried('u1', 'power', 'works'))).toEqual([
      ['works', true],
      ['looks', false],
    ]);
  });

  it('does not count a success that a known-good accessory may have made', () => {
    expect(settledBy(tried('u1', 'power', 'works', ['good-battery']))).toEqual([]);
    expect(settledBy(tried('u1', 'power', 'fails', ['good-battery']))).toEqual([['works', false]]);
  });

  it('does not count what is seen after work on the unit', () => {
    expect(settledBy(did('u1', 'new-battery', 'mended'), tried('u1', 'power', 'works'))).toEqual([]);
  });
});

describe('what was true of a listing', () => {
  it('stands on the watch list once it was bought: right, wrong, or not settled yet', () => {
    const said = [claims('power', 'works'), claims('sound', 'fails'), claims('picture', 'works')];
    const lot = bought('lot', 'marsh-lane', ['u1'], 'pocket-1', said);
    const state = benchOf([...lot, tried('u1', 'power', 'works'), tried('u1', 'sound', 'works')]);
    const [listing] = createAdvisor(pocketModels()).watch(state).listings;
    expect(listing!.told.map(({ number, said: words, right }) => [number, words, right])).toEqual([
      [1, 'Power works', true],
      [1, 'Sound fails', false],
      [1, 'Picture works', null],
    ]);
  });
});

describe('honesty of a seller', () => {
  it('starts at the prior and moves with the checked claims', () => {
    const start = honestyFrom({ right: 0, wrong: 0 });
    expect(start).toBeCloseTo(HONESTY_BEFORE, 12);
    expect(honestyFrom({ right: 10, wrong: 0 })).toBeGreaterThan(start);
    expect(honestyFrom({ right: 0, wrong: 10 })).toBeLessThan(0.3);
  });

  it('is learned from their other items, each seller apart', () => {
    const state = benchOf([
      ...bought('a', 'marsh-lane', ['u1', 'u2'], 'pocket-1', [claims('power', 'works')]),
      ...bought('b', 'hill-foot', ['u3'], 'pocket-1', [claims('power', 'works')]),
      tried('u1', 'power', 'fails'),
      tried('u3', 'power', 'works'),
    ]);
    const honesty = learnHonesty(state);
    expect(honesty.claimsChecked('marsh-lane')).toBe(1);
    expect(honesty.chance('marsh-lane', 'works')).toBeLessThan(honesty.chance('nobody', 'works'));
    expect(honesty.chance('hill-foot', 'works')).toBeGreaterThan(honesty.chance('nobody', 'works'));
    expect(honesty.chance('marsh-lane', 'works', 'u1')).toBe(honesty.chance('nobody', 'works'));
    expect(honesty.chance('marsh-lane', 'works', 'u2')).toBe(honesty.chance('marsh-lane', 'works'));
  });

  it('is learned for each kind of claim, and the other kinds are where it starts', () => {
    const steps = ['u1', 'u2', 'u3', 'u4'].map((unit) => tried(unit, 'power', 'fails'));
    const lot = bought('a', 'marsh-lane', ['u1', 'u2', 'u3', 'u4'], 'pocket-1', [claims('power', 'works')]);
    const honesty = learnHonesty(benchOf([...lot, ...steps]));
    expect(honesty.chance('marsh-lane', 'works')).toBeLessThan(honesty.chance('marsh-lane', 'looks'));
    expect(honesty.chance('marsh-lane', 'looks')).toBeLessThan(honesty.chance('nobody', 'looks'));
  });

  it('is begun anew for one kind by a reset', () => {
    const lot = bought('a', 'marsh-lane', ['u1'], 'pocket-1', [claims('power', 'works')]);
    const reset = ['learned-reset', { about: 'honesty.marsh-lane.works' }] as const;
    const honesty = learnHonesty(benchOf([...lot, tried('u1', 'power', 'fails'), reset]));
    expect(honesty.chance('marsh-lane', 'works')).toBe(HONESTY_BEFORE);
  });
});
