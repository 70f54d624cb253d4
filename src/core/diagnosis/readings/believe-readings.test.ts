import { describe, expect, it } from 'vitest';
import { assertReadingBelief } from './assert-reading-belief.ts';
import { believeReadings } from './believe-readings.ts';
import type { ReadingEvidence } from './evidence.ts';
import { ladder, LADDER_FAULTS } from './testing/ladder.ts';

const BASELINE = ladder();
const OPTIONS = { unknownRate: 0.02 };

const reading = (point: string, value: number | null): ReadingEvidence => ({ id: point, kind: 'reading', point, value });
const believe = (evidence: readonly ReadingEvidence[], baseline = BASELINE) => {
  const belief = believeReadings([{ baseline, evidence }], OPTIONS);
  assertReadingBelief(belief);
  return belief;
};

describe('the belief from readings', () => {
  it('is the prior of independent faults before anything is known', () => {
    const { none, marginal } = believe([]);
    expect(marginal.get('supply-dead')! / none).toBeCloseTo(0.03 / 0.97, 9);
    expect(marginal.get('r3-open')! / none).toBeCloseTo(0.01 / 0.99, 9);
  });

  it('finds the one fault that two voltages point at', () => {
    expect(believe([reading('in', 5.01), reading('mid', 5.0)]).marginal.get('r2-open')).toBeGreaterThan(0.95);
    expect(believe([reading('in', 0.001)]).marginal.get('supply-dead')).toBeGreaterThan(0.9);
  });

  it('takes OL for what an open gives, and a number for what it does not', () => {
    expect(believe([reading('r1', null)]).marginal.get('r1-open')).toBeGreaterThan(0.7);
    expect(believe([reading('r1', 1000)]).marginal.get('r1-open')).toBeLessThan(0.001);
  });

  it('does not count a tolerance twice: once R2 is known to be high on this board, a high middle is no news', () => {
    const high = reading('mid', 2.56);
    const apart = believe([high]).unknown;
    const together = believe([reading('r2', 1048), high]).unknown;
    const against = believe([reading('r2', 956), high]).unknown;
    expect(against).toBeGreaterThan(together);
    expect(together).toBeLessThan(2 * apart);
  });

  it('names the reading that disagrees with the rest', () => {
    const { odd } = believe([reading('in', 5), reading('mid', 2.5), reading('r1', 1000), reading('r2', 41)]);
    expect(odd[0]!.evidenceId).toBe('r2');
    expect(odd[0]!.slip).toBeGreaterThan(0.5);
    expect(odd[1]!.slip).toBeLessThan(0.2);
  });

  it('takes two faults together where neither explains all, as they are simulated', () => {
    const { sets } = believe([reading('in', 0), reading('mid', 0), reading('r1', 1000), reading('r2', null)]);
    expect(sets[0]!.faults).toEqual(['r2-open', 'supply-dead']);
  });

  it('goes on thinking of a second fault beside the one that it has found, by its rate, until a reading tells', () => {
    const ratio = (evidence: readonly ReadingEvidence[]): number => {
      const { sets } = believe(evidence);
      const chance = (wanted: string): number => sets.find(({ faults }) => faults.toSorted().join() === wanted)!.chance;
      return chance('r2-open,supply-dead') / chance('r2-open');
    };
    expect(ratio([reading('r2', null)])).toBeCloseTo(0.03 / 0.97, 6);
    expect(ratio([reading('r2', null), reading('in', 5)])).toBeLessThan(0.001);
  });

  it('lets a newer reading of a point replace an older one', () => {
    const again = believe([{ ...reading('mid', 5), id: 'first' }, reading('mid', 2.5)]);
    expect(again.weights.rows).toEqual(believe([reading('mid', 2.5)]).weights.rows);
  });

  it('weighs a trial by the functions of the circuit, and a claim by its honesty', () => {
    const trial = believe([{ id: 't', kind: 'function', function: 'lamp', outcome: 'fails' }]).none;
    const claim = believe([{ id: 't', kind: 'function', function: 'lamp', outcome: 'fails', honesty: 0.5 }]).none;
    expect(trial).toBeLessThan(claim);
    expect(claim).toBeLessThan(believe([]).none);
  });

  it('is of use while only a part of the faults is simulated', () => {
    const { marginal } = believe([reading('in', 5), reading('mid', 0)], ladder(['r1-open', 'r2-open']));
    expect(marginal.get('r1-open')).toBeGreaterThan(0.5);
    expect(marginal.get('r2-short')).toBeGreaterThan(0);
  });

  it('moves what a remedy mends to "nothing is wrong", and weighs later readings for the board as it then is', () => {
    const before = [reading('in', 5), reading('mid', 5)];
    const mended = believeReadings(
      [
        { baseline: BASELINE, evidence: before, mends: { 'r2-open': 0.95 } },
        { baseline: BASELINE, evidence: [] },
      ],
      OPTIONS,
    );
    assertReadingBelief(mended);
    expect(mended.none).toBeGreaterThan(0.85);
    const still = believeReadings(
      [
        { baseline: BASELINE, evidence: before, mends: { 'r2-open': 0.95 } },
        { baseline: BASELINE, evidence: [{ ...reading('mid', 5), id: 'later' }] },
      ],
      OPTIONS,
    );
    expect(still.marginal.get('r2-open')).toBeGreaterThan(0.5);
  });

  it('refuses a point that the circuit lacks, and baselines of different faults', () => {
    expect(() => believe([reading('nowhere', 1)])).toThrow(/no point "nowhere"/);
    const other = ladder();
    const fewer = { ...other.kernels.dictionary, faults: LADDER_FAULTS.toReversed() };
    const wrong = { ...other, kernels: { ...other.kernels, dictionary: fewer } };
    expect(() =>
      believeReadings(
        [
          { baseline: BASELINE, evidence: [] },
          { baseline: wrong, evidence: [] },
        ],
        OPTIONS,
      ),
    ).toThrow(/same faults/);
  });
});
