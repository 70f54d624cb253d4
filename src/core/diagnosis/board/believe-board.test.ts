import { describe, expect, it } from 'vitest';
import { assertBelief } from '../assert-belief.ts';
import type { Evidence } from '../model.ts';
import { nextChecks } from '../next-checks.ts';
import { outcomeBands } from '../readings/outcome-bands.ts';
import { believeReadings } from '../readings/believe-readings.ts';
import { LADDER_STAKES } from '../readings/testing/ladder.ts';
import { believeBoard, type BoardOptions } from './believe-board.ts';
import type { BoardSense } from './board-sense.ts';
import { likelyPart } from './likely-part.ts';
import { BoardReadingsAhead } from './readings-ahead.ts';
import { LADDER_PLAYER, LADDER_SENSE, read, withR2Open } from './testing/ladder-player.ts';

function believe(evidence: readonly Evidence[], options: BoardOptions = {}, sense: BoardSense = LADDER_SENSE) {
  const belief = believeBoard(LADDER_PLAYER, evidence, sense, options);
  assertBelief(belief);
  return belief;
}
const dead: Evidence = { id: 'dead', kind: 'trial', function: 'lamp', outcome: 'fails', with: [] };
const mended = (remedy: string): Evidence => ({ id: remedy, kind: 'remedy', remedy, outcome: 'not-tried-yet' });

describe('the belief in a device whose circuit is known', () => {
  it('finds the fault that two voltages point at, as readings alone do', () => {
    const readings = [read('in', 5.01), read('mid', 5)];
    const alone = believeReadings([{ baseline: LADDER_SENSE.baseline, evidence: readings as Extract<Evidence, { kind: 'reading' }>[] }], {
      unknownRate: 0.02,
    });
    const chance = believe(readings).marginal.get('r2-open')!;
    expect(chance).toBeGreaterThan(0.9);
    expect(Math.abs(chance - alone.marginal.get('r2-open')!)).toBeLessThan(0.05);
  });

  it('believes in what the circuit does not hold when all of the circuit reads well', () => {
    const { marginal } = believe([dead, read('in', 5), read('mid', 2.5), read('r1', 1000), read('r2', 1000)]);
    expect(marginal.get('holder-worn')).toBeGreaterThan(0.5);
    expect(marginal.get('r1-open')).toBeLessThan(0.02);
    expect(marginal.get('shell-cracked')).toBeLessThan(0.1);
  });

  it('takes a fault of the circuit and one beyond it together', () => {
    const cracked: Evidence = { id: 'crack', kind: 'finding', block: 'shell', sees: 'cracked' };
    const { sets } = believe([cracked, dead, read('in', 5), read('mid', 5)]);
    expect([...sets[0]!.faults].sort()).toEqual(['r2-open', 'shell-cracked']);
  });

  it('holds a part for missing that was seen to be, though such a thing is rare, and asks what else there is beside it', () => {
    const gap: Evidence = { id: 'gap', kind: 'finding', block: 'lamp', part: 'r3', sees: 'missing' };
    expect(believe([gap]).marginal.get('r3-open')).toBeGreaterThan(0.95);
    const { sets } = believe([gap, read('in', 0.001)], { certain: [4], pairs: 0 });
    expect(sets[0]!.faults).toEqual(['supply-dead', 'r3-open']);
  });

  it('reads boards that have a certain fault as such boards read', () => {
    const evidence = [read('in', 5), read('mid', 0), read('r2', null)];
    const plain = believe(evidence, { certain: [1], pairs: 0 });
    const known = believe(evidence, { certain: [1], pairs: 0 }, withR2Open());
    const both = (belief: typeof plain) => belief.sets.find(({ faults }) => faults.join() === 'r1-open,r2-open')?.chance ?? 0;
    expect(both(known)).toBeGreaterThan(0.7);
    expect(both(known)).toBeGreaterThan(both(plain));
  });

  it('counts readings for the board at their time: after the remedy a good reading clears the fault', () => {
    const before = [dead, read('in', 5), read('mid', 5), mended('new-r2')];
    expect(believe(before).marginal.get('r2-open')).toBeLessThan(0.1);
    expect(believe([...before, read('mid', 2.5, 'again')]).marginal.get('r2-open')).toBeLessThan(0.01);
    expect(believe([...before, read('mid', 5, 'again')]).marginal.get('r2-open')).toBeGreaterThan(0.5);
  });

  it('forgets the tolerances of a board that was changed for another', () => {
    const swap: Evidence = { id: 'swap', kind: 'transplant', blocks: ['divider', 'supply', 'lamp'], incoming: { 'r2-open': 0.5 } };
    const { byDraw, draws, marginal } = believe([read('r2', 1048), swap]);
    expect(marginal.get('r2-open')).toBeGreaterThan(0.3);
    const healthy = byDraw.subarray(0, draws);
    expect(Math.max(...healthy)).toBeCloseTo(Math.min(...healthy), 12);
  });

  it('names the reading that disagrees, and how likely it says nothing', () => {
    const { slips, odd } = believe([read('in', 5), read('mid', 2.5), read('r1', 1000), read('r2', 0.5)], { pairs: 0 });
    expect(slips[0]!.evidenceId).toBe('read r2');
    expect(slips[0]!.slip).toBeGreaterThan(0.5);
    expect(odd.map(({ evidenceId }) => evidenceId)).toContain('read r2');
  });

  it('centres what a good board reads on the good boards that were measured', () => {
    const references = new Map([['mid', { mean: 2.7, spread: 0.02, boards: 8 }]]);
    const evidence = [read('mid', 2.69), read('in', 5)];
    expect(believe(evidence, {}, { ...LADDER_SENSE, references }).none).toBeGreaterThan(1.2 * believe(evidence).none);
  });
});

describe('the next check with a circuit', () => {
  const bands = outcomeBands(LADDER_SENSE.baseline.kernels);
  const rank = (evidence: readonly Evidence[], already: readonly string[] = [], left = 0) => {
    const belief = believe(evidence);
    const likely = likelyPart(LADDER_PLAYER, belief, left);
    const ahead = new BoardReadingsAhead(LADDER_SENSE, bands, likely, { side: 'front', power: 'on', mode: 'volts' }, new Set(already));
    return { ahead, ranked: nextChecks(likely.model, likely.belief, evidence, LADDER_STAKES, { readings: ahead }), likely };
  };

  it('ranks readings among trials and looks, with the range of each outcome and what it would mean', () => {
    const { ranked } = rank([dead]);
    const mid = ranked.find(({ check }) => check.id === 'measure-mid')!;
    const high = mid.outcomes.find(({ range }) => range![0] < 5 && range![1] > 5)!;
    expect(high.sets[0]!.faults).toEqual(['r2-open']);
    expect(mid.outcomes.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 6);
    expect(ranked.findIndex(({ check }) => check.id === 'measure-mid')).toBeLessThan(
      ranked.findIndex(({ check }) => check.id === 'look-shell'),
    );
  });

  it('looks ahead from the likely part of a belief much as from all of it', () => {
    const [whole, part] = [rank([dead, read('in', 5)], ['in']), rank([dead, read('in', 5)], ['in'], 0.03)];
    expect(part.likely.model.faults.length).toBeLessThan(LADDER_PLAYER.faults.length);
    assertBelief(part.likely.belief);
    expect(part.ranked[0]!.check.id).toBe(whole.ranked[0]!.check.id);
    expect(Math.abs(part.ranked[0]!.bits - whole.ranked[0]!.bits)).toBeLessThan(0.1);
  });

  it('sees little in reading a point again', () => {
    const { ranked, ahead } = rank([dead, read('mid', 2.5)], ['mid']);
    expect(ranked.find(({ check }) => check.id === 'measure-mid')!.repeat).toBe(true);
    expect(ahead.mostTelling(9, () => 0, new Set())).not.toContain('mid');
  });

  it('names the points that tell most per minute without weighing them in money', () => {
    const { ahead } = rank([dead]);
    expect(ahead.mostTelling(2, () => 0, new Set())).toHaveLength(2);
    expect(ahead.mostTelling(9, (point) => (point === 'mid' ? 500 : 0), new Set()).at(-1)).toBe('mid');
  });
});
