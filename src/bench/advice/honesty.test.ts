import { describe, expect, it } from 'vitest';
import { claimsSettled, honestyFrom, HONESTY_PRIOR, learnHonesty } from './honesty.ts';
import { createAdvisor } from './advisor.ts';
import { benchOf, bought, claims, did, saw, tried } from './testing/bench-of.ts';
import { pocketModels } from './testing/pocket-model.ts';

const settledBy = (...steps: Parameters<typeof benchOf>[0]) => {
  const state = benchOf([
    ...bought('lot', 'marsh-lane', ['u1'], 'pocket-1', [claims('power', 'works'), { about: 'place', place: 'display', sees: 'cracked' }]),
    ...steps,
  ]);
  return claimsSettled(state.items.get('u1')!).get('marsh-lane');
};

describe('claims against facts', () => {
  it('counts a claim as right or wrong by the first trial or look', () => {
    expect(settledBy()).toBeUndefined();
    expect(settledBy(tried('u1', 'power', 'works'))).toEqual({ right: 1, wrong: 0 });
    expect(settledBy(tried('u1', 'power', 'comes-and-goes'), tried('u1', 'power', 'works'))).toEqual({ right: 0, wrong: 1 });
    expect(settledBy(saw('u1', 'display', 'nothing-wrong'), tried('u1', 'power', 'works'))).toEqual({ right: 1, wrong: 1 });
  });

  it('does not count a success that a known-good accessory may have made', () => {
    expect(settledBy(tried('u1', 'power', 'works', ['good-battery']))).toBeUndefined();
    expect(settledBy(tried('u1', 'power', 'fails', ['good-battery']))).toEqual({ right: 0, wrong: 1 });
  });

  it('does not count what is seen after work on the unit', () => {
    expect(settledBy(did('u1', 'new-battery', 'mended'), tried('u1', 'power', 'works'))).toBeUndefined();
  });
});

describe('what was true of a listing', () => {
  it('stands on the watch list once it was bought: right, wrong, or not settled yet', () => {
    const said = [claims('power', 'works'), claims('sound', 'fails'), claims('picture', 'works')];
    const state = benchOf([
      ...bought('lot', 'marsh-lane', ['u1'], 'pocket-1', said),
      tried('u1', 'power', 'works'),
      tried('u1', 'sound', 'works'),
    ]);
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
    expect(start).toBeCloseTo(HONESTY_PRIOR.right / (HONESTY_PRIOR.right + HONESTY_PRIOR.wrong), 12);
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
    const honesty = learnHonesty(state.items.values());
    expect(honesty.claimsChecked('marsh-lane')).toBe(1);
    expect(honesty.chance('marsh-lane')).toBeLessThan(honesty.chance('nobody'));
    expect(honesty.chance('hill-foot')).toBeGreaterThan(honesty.chance('nobody'));
    expect(honesty.chance('marsh-lane', 'u1')).toBe(honesty.chance('nobody'));
    expect(honesty.chance('marsh-lane', 'u2')).toBe(honesty.chance('marsh-lane'));
  });
});
