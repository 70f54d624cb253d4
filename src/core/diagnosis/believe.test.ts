import { describe, expect, it } from 'vitest';
import { afterTransplant, assertBelief, believe, DiagnosisError, nextChecks, type Belief, type Evidence } from './index.ts';
import { SMALL_PLAYER, STAKES, trial } from './testing/small-player.ts';

const on = (...evidence: Evidence[]): Belief => believe(SMALL_PLAYER, evidence);
const chance = (belief: Belief, fault: string): number => belief.marginal.get(fault)!;
const DEAD = trial('dead', 'power', 'fails');

describe('belief before any evidence', () => {
  it('has every set of up to two faults, the rates in their order, and the unknown at its own rate', () => {
    const belief = on();
    assertBelief(belief);
    expect(belief.sets).toHaveLength(1 + 6 + 15);
    expect(belief.unknown).toBeCloseTo(0.05, 12);
    expect(belief.none).toBeLessThan(0.1);
    expect(chance(belief, 'cell-flat') / chance(belief, 'display-cracked')).toBeGreaterThan(2);
  });
});

describe('trials', () => {
  it('raise what a function needs and lower what it does not', () => {
    const [before, after] = [on(), on(DEAD)];
    expect(chance(after, 'cell-flat')).toBeGreaterThan(chance(before, 'cell-flat') * 1.4);
    expect(chance(after, 'display-cracked')).toBeLessThan(chance(before, 'display-cracked'));
  });

  it('clear the block that a known-good accessory stood in for', () => {
    const still = on(DEAD, trial('aided', 'power', 'fails', ['good-cell']));
    const lives = on(DEAD, trial('aided', 'power', 'works', ['good-cell']));
    expect(chance(still, 'cell-flat')).toBeLessThan(chance(on(DEAD), 'cell-flat'));
    expect(chance(still, 'converter-dead')).toBeGreaterThan(chance(on(DEAD), 'converter-dead'));
    expect(chance(lives, 'cell-flat')).toBeGreaterThan(0.9);
  });

  it('of a function with two ways hold only the pair that blocks both', () => {
    const mute = on(trial('a', 'power', 'works'), trial('b', 'picture', 'works'), trial('c', 'sound', 'fails'));
    expect(mute.sets[0]!.faults).toEqual(['speaker-open', 'jack-stuck']);
  });

  it('said five times tell hardly more than once', () => {
    const again = Array.from({ length: 4 }, (_, i) => ({ ...DEAD, id: `again${i}` }));
    expect(Math.abs(chance(on(DEAD, ...again), 'cell-flat') - chance(on(DEAD), 'cell-flat'))).toBeLessThan(0.08);
  });

  it('that repeat an outcome each add a tenth of the first, and a different outcome counts in full', () => {
    const again = Array.from({ length: 5 }, (_, i) => ({ ...DEAD, id: `again${i}` }));
    const step = (from: Belief, to: Belief, s: number): number =>
      Math.log(to.weights[s]! / from.weights[s]!) - Math.log(to.weights[0]! / from.weights[0]!);
    const states = [...on().weights.keys()].slice(1);
    for (const s of states) expect(step(on(DEAD), on(DEAD, ...again), s)).toBeCloseTo(0.5 * step(on(), on(DEAD), s), 9);
    const sometimes = on(trial('once', 'power', 'comes-and-goes'));
    on(DEAD, trial('lives', 'power', 'works')).weights.forEach((weight, s) => expect(weight).toBeCloseTo(sometimes.weights[s]!, 12));
  });

  it('that contradict each other count as coming and going', () => {
    const both = on(DEAD, trial('lives', 'power', 'works'));
    expect(both.sets[0]!.faults).toEqual(['switch-dirty']);
    expect(both.weights).toEqual(on(trial('lives', 'power', 'works'), DEAD).weights);
  });

  it('that nothing in the model explains raise the unknown', () => {
    const lone = { ...SMALL_PLAYER, functions: [...SMALL_PLAYER.functions, { id: 'vibrates', needs: [['motor']] }] };
    const belief = believe(lone, [trial('a', 'vibrates', 'fails'), trial('b', 'power', 'works')]);
    expect(belief.unknown).toBeGreaterThan(0.5);
  });
});

describe('claims', () => {
  const claim = (honesty: number): Evidence => ({ id: 'c', kind: 'claim', function: 'power', says: 'fails', honesty });

  it('tell nothing from a seller who is never right, and as much as a trial from one who always is', () => {
    on(claim(0)).weights.forEach((weight, s) => expect(weight).toBeCloseTo(on().weights[s]!, 12));
    on(claim(1)).weights.forEach((weight, s) => expect(weight).toBeCloseTo(on(DEAD).weights[s]!, 12));
  });

  it('said again add nothing', () => {
    expect(on(claim(0.7), { ...claim(0.7), id: 'again' }).weights).toEqual(on(claim(0.7)).weights);
  });

  it('tell more the more honest the seller is', () => {
    const chances = [0.1, 0.5, 0.9].map((honesty) => chance(on(claim(honesty)), 'cell-flat'));
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances[2]).toBeGreaterThan(chances[0]! + 0.05);
  });

  it('of a place are weighed like findings', () => {
    const said = on({ id: 'c', kind: 'claim-place', block: 'display', sees: 'cracked', honesty: 0.8 });
    expect(chance(said, 'display-cracked')).toBeGreaterThan(2 * chance(on(), 'display-cracked'));
  });
});

describe('findings', () => {
  it('raise the fault that shows itself so, and "nothing wrong" lowers what would have been seen', () => {
    const before = chance(on(), 'display-cracked');
    const seen = on({ id: 'f', kind: 'finding', block: 'display', sees: 'cracked' });
    const clean = on({ id: 'f', kind: 'finding', block: 'display', sees: 'nothing-wrong' });
    expect(chance(seen, 'display-cracked')).toBeGreaterThan(0.7);
    expect(chance(clean, 'display-cracked')).toBeLessThan(before / 5);
  });

  const look = (sees: string, id = sees, block = 'switch'): Evidence => ({ id, kind: 'finding', block, sees });

  it('of the same look again and again tell what the first look told', () => {
    const again = Array.from({ length: 20 }, (_, i) => look('nothing-wrong', `again${i}`));
    expect(on(DEAD, ...again).weights).toEqual(on(DEAD, look('nothing-wrong')).weights);
    expect(chance(on(DEAD, ...again), 'switch-dirty')).toBeGreaterThan(0.1);
  });

  it('are replaced by a newer look at the same block, until the unit is changed', () => {
    expect(on(look('dirty'), look('nothing-wrong')).weights).toEqual(on(look('nothing-wrong')).weights);
    expect(on(look('nothing-wrong'), look('dirty')).weights).toEqual(on(look('dirty')).weights);
    const elsewhere = look('nothing-wrong', 'other', 'display');
    expect(on(look('dirty'), elsewhere).weights).not.toEqual(on(elsewhere).weights);
    const cleaned: Evidence = { id: 'r', kind: 'remedy', remedy: 'clean-switch', outcome: 'not-tried-yet' };
    expect(on(look('dirty'), cleaned, look('nothing-wrong')).weights).not.toEqual(on(cleaned, look('nothing-wrong')).weights);
  });

  it('of several kinds at one block stand beside each other', () => {
    const both = on(look('burnt', 'b', 'converter'), look('corrosion', 'c', 'converter'));
    expect(chance(both, 'converter-dead')).toBeGreaterThan(chance(on(look('corrosion', 'c', 'converter')), 'converter-dead'));
  });

  it('of a kind that no fault shows still hint a little at the block', () => {
    const hint = on({ id: 'f', kind: 'finding', block: 'speaker', sees: 'residue' });
    expect(chance(hint, 'speaker-open')).toBeGreaterThan(chance(on(), 'speaker-open'));
    expect(chance(hint, 'speaker-open')).toBeLessThan(0.5);
  });

  it('"nothing wrong" at a fault that cannot be seen says nothing of it', () => {
    const ratio = (belief: Belief): number => chance(belief, 'speaker-open') / chance(belief, 'jack-stuck');
    const looked = on({ id: 'f', kind: 'finding', block: 'speaker', sees: 'nothing-wrong' });
    expect(ratio(looked)).toBeCloseTo(ratio(on()), 12);
  });
});

describe('readings', () => {
  const rail = (value: number, id: string): Evidence => ({ id, kind: 'reading', point: 'rail', value });

  it('are replaced by a newer one at the same point', () => {
    expect(on(rail(0.02, 'slip'), rail(3.3, 'good')).weights).toEqual(on(rail(3.3, 'good')).weights);
    const again = Array.from({ length: 9 }, (_, i) => rail(3.3, `good${i}`));
    expect(on(...again).weights).toEqual(on(rail(3.3, 'good')).weights);
  });
});

describe('remedies', () => {
  const remedy = (outcome: 'mended' | 'not-mended' | 'made-worse' | 'not-tried-yet', id = 'new-cell'): Evidence => ({
    id: `r-${id}`,
    kind: 'remedy',
    remedy: id,
    outcome,
  });

  it('take the fault away by their chance when nothing was seen after them', () => {
    expect(chance(on(DEAD, remedy('not-tried-yet')), 'cell-flat')).toBeCloseTo(0.05 * chance(on(DEAD), 'cell-flat'), 12);
  });

  it('that mended leave a unit that is likely well; that did not, leave another fault', () => {
    expect(on(DEAD, remedy('mended')).none).toBeGreaterThan(0.5);
    const failed = on(DEAD, remedy('not-mended'));
    expect(failed.none).toBeLessThan(0.1);
    expect(chance(failed, 'converter-dead')).toBeGreaterThan(chance(on(DEAD), 'converter-dead'));
  });

  it('that made it worse leave something that the model may not hold', () => {
    expect(on(DEAD, remedy('made-worse')).unknown).toBeGreaterThan(0.5);
  });

  it('end the time that earlier trials speak of', () => {
    const now = on(DEAD, remedy('not-tried-yet'), trial('lives', 'power', 'works'));
    expect(chance(now, 'converter-dead')).toBeLessThan(0.05);
    expect(now.odd).toEqual([]);
  });
});

describe('a test at length that failed', () => {
  const ALL_WELL = ['power', 'sound', 'picture'].flatMap((fn) => [
    trial(`${fn}-1`, fn, 'works'),
    trial(`${fn}-2`, fn, 'works', ['good-cell']),
  ]);

  it('leaves no belief that nothing is wrong, and the faults among themselves as they were', () => {
    const [before, after] = [on(...ALL_WELL), on(...ALL_WELL, { id: 'n', kind: 'not-well' })];
    expect(before.none).toBeGreaterThan(0.25);
    expect(after.none).toBeLessThan(0.001);
    expect(chance(after, 'display-cracked') / chance(after, 'cell-flat')).toBeCloseTo(
      chance(before, 'display-cracked') / chance(before, 'cell-flat'),
      9,
    );
    expect(on(...ALL_WELL, { id: 'n', kind: 'not-well' }, { id: 'm', kind: 'not-well' }).weights).toEqual(after.weights);
  });
});

describe('transplants', () => {
  it('are believed alike whether they are done or thought of', () => {
    const swap = { blocks: ['cell', 'switch'], incoming: { 'cell-flat': 0.3, 'switch-dirty': 0.1 } };
    const [done, thought] = [
      on(DEAD, { id: 't', kind: 'transplant', ...swap }),
      afterTransplant(SMALL_PLAYER, on(DEAD), swap.blocks, swap.incoming),
    ];
    assertBelief(thought);
    expect(chance(thought, 'converter-dead')).toBeGreaterThan(0.1);
    for (const [fault, expected] of done.marginal) expect(chance(thought, fault), fault).toBeCloseTo(expected, 12);
  });

  it('of everything leave just the incoming chances', () => {
    const blocks = [...new Set(SMALL_PLAYER.faults.map(({ block }) => block))];
    const belief = on(DEAD, { id: 't', kind: 'transplant', blocks, incoming: { 'switch-dirty': 0.25 } });
    expect(chance(belief, 'switch-dirty')).toBeCloseTo(0.25, 12);
    expect(belief.none).toBeCloseTo(0.75, 12);
    expect(belief.unknown).toBe(0);
  });

  it('leave what is believed of the other blocks', () => {
    const before = on(DEAD);
    const after = on(DEAD, { id: 't', kind: 'transplant', blocks: ['display'], incoming: {} });
    expect(chance(after, 'display-cracked')).toBe(0);
    expect(chance(after, 'cell-flat')).toBeCloseTo(chance(before, 'cell-flat'), 12);
  });

  it('that find a slot empty once more change nothing, and what was seen before still counts once', () => {
    const out = (id: string): Evidence => ({ id, kind: 'transplant', blocks: ['cell'], incoming: null });
    const look: Evidence = { id: 'f', kind: 'finding', block: 'switch', sees: 'nothing-wrong' };
    expect(on(out('a'), look, out('b'), { ...look, id: 'g' }).weights).toEqual(on(out('a'), look).weights);
  });

  it('that leave a slot empty make what needs it fail surely, until something comes in', () => {
    const out: Evidence = { id: 'out', kind: 'transplant', blocks: ['cell'], incoming: null };
    const empty = on(out);
    expect([...empty.absent]).toEqual(['cell']);
    const [tried] = nextChecks({ ...SMALL_PLAYER, checks: SMALL_PLAYER.checks.slice(0, 1) }, empty, [out], STAKES);
    expect(tried!.outcomes.find(({ outcome }) => outcome === 'fails')!.chance).toBeCloseTo(0.98, 9);
    const filled = on(out, { id: 'in', kind: 'transplant', blocks: ['cell'], incoming: {} });
    expect(filled.absent.size).toBe(0);
  });
});

describe('odd evidence', () => {
  it('is named with its chance given all the rest, earlier and later', () => {
    const rest = [trial('b', 'picture', 'works'), trial('c', 'sound', 'works'), trial('d', 'power', 'works', ['good-cell'])];
    const odd = on(DEAD, ...rest).odd;
    const check = { id: 'c', kind: 'try', function: 'power', with: [], minutes: 1, stage: 'closed' } as const;
    const [predicted] = nextChecks({ ...SMALL_PLAYER, checks: [check] }, on(...rest), [], STAKES);
    expect(odd.map(({ evidenceId }) => evidenceId)).toEqual(['dead']);
    expect(odd[0]!.chance).toBeCloseTo(predicted!.outcomes.find(({ outcome }) => outcome === 'fails')!.chance, 12);
  });

  it('counts what was seen after a remedy', () => {
    const unlikely: Evidence = { id: 'r', kind: 'remedy', remedy: 'new-speaker', outcome: 'mended' };
    const belief = on(DEAD, trial('aided', 'power', 'works', ['good-cell']), unlikely, trial('still', 'power', 'fails'));
    expect(belief.odd.map(({ evidenceId }) => evidenceId)).toContain('r');
  });
});

describe('a name that the model lacks', () => {
  it.each<Evidence>([
    trial('t', 'flies', 'works'),
    { id: 'r', kind: 'reading', point: 'nowhere', value: 1 },
    { id: 'm', kind: 'remedy', remedy: 'prayer', outcome: 'mended' },
  ])('is a mistake of the caller: $kind', (piece) => {
    expect(() => on(piece)).toThrow(DiagnosisError);
  });
});
