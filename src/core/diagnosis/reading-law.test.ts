import { describe, expect, it } from 'vitest';
import { believe, type DeviceModel, type Evidence } from './index.ts';
import { METER_SCALES } from './meter-scale.ts';
import type { TestPoint } from './model.ts';
import { readingLaw, type Condition } from './reading-law.ts';
import { SMALL_PLAYER } from './testing/small-player.ts';

const CONDITIONS: readonly Condition[] = ['normal', 'low', 'high', 'zero', 'open', 'any', 'slip'];
const point = (mode: TestPoint['mode'], reference: TestPoint['reference']): TestPoint => ({ id: 'p', block: 'b', mode, reference });
const POINTS: readonly TestPoint[] = [
  ...SMALL_PLAYER.points,
  point('volts', { mean: -5, spread: 0.1, boards: 3 }),
  point('volts', { mean: 0, spread: 0.01, boards: 2 }),
  point('ohms', { mean: 4700, spread: 100, boards: 1 }),
  point('ohms', { mean: 0.2, spread: 0.05, boards: 6 }),
  point('diode', { mean: 0.55, spread: 0.01, boards: 8 }),
  point('diode', { mean: null, spread: 0, boards: 2 }),
  point('amps', { mean: 0.05, spread: 0.004, boards: 4 }),
  point('volts', null),
];

/** The number whose place on the meter's scale is x, found by halving. */
function valueAt(mode: TestPoint['mode'], x: number): number {
  let [low, high] = [-1e9, 1e9];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (METER_SCALES[mode].of(middle) < x) low = middle;
    else high = middle;
  }
  return high;
}

describe('what a reading looks like', () => {
  it.each(POINTS)('shares the whole among the bands: $mode, reference $reference', (each) => {
    const law = readingLaw(each);
    for (const condition of CONDITIONS) {
      const chances = law.bands.map((band) => law.bandChance(condition, band));
      expect(chances.every((chance) => chance >= 0)).toBe(true);
      expect(chances.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    }
  });

  it('has densities that add up to the chance of a number within what the meter shows', () => {
    const law = readingLaw(point('volts', { mean: 3.3, spread: 0.05, boards: 5 }));
    const steps = 20_000;
    const [from, to] = [METER_SCALES.volts.of(-200), METER_SCALES.volts.of(200)];
    for (const condition of CONDITIONS) {
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const x = from + ((i + 0.5) * (to - from)) / steps;
        sum += (law.density(condition, valueAt('volts', x)) * (to - from)) / steps;
      }
      expect(sum + law.density(condition, null)).toBeGreaterThan(condition === 'slip' ? 0.9 : 0.96);
      expect(sum + law.density(condition, null)).toBeLessThan(1.005);
    }
  });

  it('puts a value into the band that it would be said to be in', () => {
    const rail = readingLaw(point('volts', { mean: 3.3, spread: 0.03, boards: 4 }));
    expect([3.31, 2.4, 5, 0.02, null].map((value) => rail.bandOf(value))).toEqual(['normal', 'low', 'high', 'near-zero', 'OL']);
    const negative = readingLaw(point('volts', { mean: -5, spread: 0.05, boards: 4 }));
    expect([-5.02, -2, -9, 0, 5].map((value) => negative.bandOf(value))).toEqual(['normal', 'low', 'high', 'near-zero', 'low']);
    const open = readingLaw(point('ohms', { mean: null, spread: 0, boards: 3 }));
    expect([null, 0.3, 5000].map((value) => open.bandOf(value))).toEqual(['normal', 'near-zero', 'low']);
    const bare = readingLaw(point('ohms', null));
    expect([null, 0.3, 5000].map((value) => bare.bandOf(value))).toEqual(['OL', 'near-zero', 'number']);
  });
});

describe('readings in a belief', () => {
  const reading = (name: string, value: number | null): Evidence => ({ id: `${name} ${value}`, kind: 'reading', point: name, value });
  const dead: Evidence = { id: 't', kind: 'trial', function: 'power', outcome: 'fails', with: [] };
  const chance = (fault: string, ...evidence: Evidence[]): number => believe(SMALL_PLAYER, evidence).marginal.get(fault)!;

  it('tell which fault shifts a point that way', () => {
    expect(chance('cell-flat', dead, reading('cell-v', 2.1))).toBeGreaterThan(0.85);
    expect(chance('cell-flat', dead, reading('cell-v', 3.71))).toBeLessThan(0.15);
    expect(chance('converter-dead', dead, reading('cell-v', 3.71), reading('rail', 0.01))).toBeGreaterThan(0.7);
  });

  it('tell more the better the good boards agree', () => {
    const loose: DeviceModel = {
      ...SMALL_PLAYER,
      points: SMALL_PLAYER.points.map((each) => ({ ...each, reference: { mean: 3.7, spread: 1, boards: 3 } })),
    };
    const low = reading('cell-v', 3.0);
    expect(believe(SMALL_PLAYER, [low]).marginal.get('cell-flat')!).toBeGreaterThan(believe(loose, [low]).marginal.get('cell-flat')! + 0.1);
  });

  it('without a reference still know an open coil from one that reads, and are silent on the rest', () => {
    expect(chance('converter-dead', dead, reading('coil', null))).toBeGreaterThan(1.5 * chance('converter-dead', dead));
    expect(chance('converter-dead', dead, reading('coil', 12))).toBeLessThan(0.2 * chance('converter-dead', dead));
    const low: DeviceModel = {
      ...SMALL_PLAYER,
      faults: SMALL_PLAYER.faults.map((fault) => (fault.id === 'converter-dead' ? { ...fault, shifts: { coil: 'low' as const } } : fault)),
    };
    const silent = believe(low, [dead, reading('coil', 12)]).marginal;
    const before = believe(low, [dead]).marginal;
    expect(silent.get('converter-dead')! / silent.get('switch-dirty')!).toBeCloseTo(
      before.get('converter-dead')! / before.get('switch-dirty')!,
      9,
    );
  });
});
