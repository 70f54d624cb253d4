import { describe, expect, it } from 'vitest';
import { HANDHELD_METER, meterError, standardUncertainty, type MeterProfile } from '../../src/core/circuit/index.ts';

/** The handheld meter with one range of volts of another specification. */
const withVolts = (percent: number, digits: number, resolution: number): MeterProfile => ({
  ...HANDHELD_METER,
  volts: { inputOhm: 10e6, ranges: [{ upTo: 1000, resolution, percent, digits }] },
});

/** Values and their sources: SOURCE.md, "Accuracy of a meter". */
describe('the accuracy of a meter, against published examples', () => {
  it.each([
    { reading: 1.755, percent: 0.5, digits: 1, resolution: 0.001, limit: 0.009775 },
    { reading: 2, percent: 0.08, digits: 2, resolution: 0.001, limit: 0.0036 },
    { reading: 100, percent: 1, digits: 2, resolution: 0.1, limit: 1.2 },
  ])('$reading V at $percent % + $digits is off by at most $limit V', ({ reading, percent, digits, resolution, limit }) => {
    expect(meterError(withVolts(percent, digits, resolution), 'volts', reading)).toBeCloseTo(limit, 12);
    expect(meterError(withVolts(percent, digits, resolution), 'volts', -reading)).toBeCloseTo(limit, 12);
  });

  it('turns a limit into a standard uncertainty as for an even spread', () => {
    const limit = meterError(withVolts(0.5, 2, 0.001), 'volts', 3.7);
    expect(limit * 1e3).toBeCloseTo(20.5, 9);
    expect(standardUncertainty(limit) * 1e3).toBeCloseTo(11.836, 3);
    expect(2 * standardUncertainty(limit) * 1e3).toBeCloseTo(23.671, 3);
  });
});
