import { describe, expect, it } from 'vitest';
import { CIRCUITS, FAULTS } from './circuits.ts';
import { ourVoltages, voltageDifferences } from './compare-voltages.ts';
import { TREES } from './regulator-trees.ts';

/** Target of the comparison. */
const MAX_RELATIVE = 1e-4;

async function largestDifference(ours: string, theirs: string): Promise<number> {
  const differences = await voltageDifferences(ours, theirs);
  expect(differences.length).toBeGreaterThan(1);
  return Math.max(...differences);
}

describe('node voltages against a general simulator of the same notation', () => {
  it('are compared on at least a dozen circuits', () => {
    expect(Object.keys(CIRCUITS).length).toBeGreaterThanOrEqual(12);
  });

  it.each(Object.entries(CIRCUITS))('%s', async (_, text) => {
    expect(await largestDifference(text, text)).toBeLessThan(MAX_RELATIVE);
  });

  it.each(FAULTS)('$circuit with $name', async ({ circuit, from, to }) => {
    const faulty = CIRCUITS[circuit]!.replace(from, to);
    expect(faulty).not.toBe(CIRCUITS[circuit]);
    expect(await largestDifference(faulty, faulty)).toBeLessThan(MAX_RELATIVE);
  });

  it.each(TREES)('$name', async ({ ours, theirs }) => {
    expect(await largestDifference(ours, theirs)).toBeLessThan(MAX_RELATIVE);
  });
});

describe('textbook circuits with answers by hand', () => {
  it('divides a voltage by the ratio of two resistors', () => {
    expect(ourVoltages('t\nV1 in 0 10\nR1 in a 1k\nR2 a 0 3k').get('a')).toBeCloseTo(7.5, 4);
  });

  it('leaves no voltage across a balanced bridge (Wheatstone 1843)', () => {
    const v = ourVoltages('t\nV1 t 0 6\nR1 t l 1k\nR2 l 0 2k\nR3 t r 10k\nR4 r 0 20k\nRM l r 50');
    expect(v.get('l')! - v.get('r')!).toBeCloseTo(0, 6);
  });

  it('finds the drop of a diode behind a resistor by the Lambert W function (Corless et al. 1996)', () => {
    const [supply, ohm, saturation, vt] = [5, 1000, 1e-14, 300.15 * (1.380649e-23 / 1.602176634e-19)];
    const w = lambertW(((saturation * ohm) / vt) * Math.exp((supply + saturation * ohm) / vt));
    const expected = supply + saturation * ohm - vt * w;
    expect(ourVoltages('t\nV1 in 0 5\nR1 in a 1k\nD1 a 0 DX\n.model DX D(IS=1e-14)').get('a')).toBeCloseTo(expected, 6);
  });

  it('biases a transistor as the hand calculation with its own base voltage says', () => {
    const v = ourVoltages('t\nV1 vcc 0 12\nR1 vcc b 100k\nRC vcc c 1k\nQ1 c b 0 QN\n.model QN NPN(IS=1e-14 BF=100)');
    const base = (12 - v.get('b')!) / 100e3;
    expect(12 - v.get('c')!).toBeCloseTo(100 * base * 1000, 2);
  });
});

/** Principal branch by Halley's iteration, for large arguments too: its logarithm is what the iteration works on. */
function lambertW(z: number): number {
  let w = Math.log(z) - Math.log(Math.log(z));
  for (let i = 0; i < 50; i++) w -= (w + Math.log(w) - Math.log(z)) / (1 + 1 / w);
  return w;
}
