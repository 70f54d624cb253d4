import { describe, expect, it } from 'vitest';
import {
  ALLOYS,
  CELL_LIMITS,
  cellShipping,
  CHEMISTRIES,
  countCharge,
  HEAT_PROFILES,
  judgeCharge,
  twoLoadResistance,
  workTemperatures,
} from '../../src/core/rework/index.ts';
import { chargeOf } from './simulated-cell.ts';

/** Values, sources and traps: SOURCE.md. */
const ALLOY_TABLE = {
  Sn63Pb37: [183, 183],
  Sn60Pb40: [183, 191],
  Sn62Pb36Ag2: [179, 179],
  SAC305: [217, 220],
  'Sn99.3Cu0.7': [227, 227],
  'Sn96.5Ag3.5': [221, 221],
  Sn42Bi58: [138, 138],
  Sn42Bi57Ag1: [139, 140],
  In52Sn48: [118, 118],
  Bi46Sn34Pb20: [96, 96],
} as const;

describe('solder', () => {
  it('melts where the makers say', () => {
    const ours = Object.fromEntries(Object.entries(ALLOYS).map(([name, { solidusC, liquidusC }]) => [name, [solidusC, liquidusC]]));
    expect(ours).toEqual(ALLOY_TABLE);
  });

  it('of bismuth on leaded pads is warned of, and only there', () => {
    expect(workTemperatures('Sn42Bi58', true).warnings).toEqual(['bismuth-and-lead-melt-at-96']);
    expect(workTemperatures('Sn42Bi58').warnings).toEqual([]);
    expect(workTemperatures('SAC305', true).warnings).toEqual([]);
  });

  it('has the limits of J-STD-020D lead-free, and of 020C tin-lead where revisions differ', () => {
    expect(HEAT_PROFILES['lead-free']).toMatchObject({
      preheatC: [150, 200],
      preheatS: [60, 120],
      rampUp: 3,
      liquidusC: 217,
      aboveLiquidusS: [60, 150],
      nearPeakS: [20, 30],
      peakC: 260,
      rampDown: 6,
      toPeakS: 8 * 60,
    });
    expect(HEAT_PROFILES.leaded).toMatchObject({
      preheatC: [100, 150],
      preheatS: [60, 120],
      rampUp: 3,
      liquidusC: 183,
      aboveLiquidusS: [60, 150],
      nearPeakS: [10, 30],
      peakC: 240,
      rampDown: 6,
      toPeakS: 6 * 60,
    });
  });
});

describe('cells', () => {
  it('has the resistance of the worked two loads', () => {
    expect(twoLoadResistance(3.95, 0.2, 3.83, 1.0)).toBeCloseTo(0.15, 12);
  });

  it('counts 750 mAh for half an ampere in an hour and a half, 37.5 % of 2000 mAh', () => {
    const samples = Array.from({ length: 541 }, (_, i) => ({ seconds: i * 10, volts: 3.8, amps: 0.5 }));
    const { inAh } = countCharge(samples, []);
    expect(inAh).toBeCloseTo(0.75, 12);
    expect(inAh / 2).toBeCloseTo(0.375, 12);
  });

  it('lets an offset of 1 mA over a day make 24 mAh unsure', () => {
    const day = [0, 86_400].map((seconds) => ({ seconds, volts: 3.8, amps: 0 }));
    expect(countCharge(day, []).unsureAh).toBeCloseTo(0.024, 12);
  });

  it('reads the charge of the data sheet: 0.5 C to 4.20 V, ended at 0.05 C of 2500 mAh', () => {
    const log = chargeOf({ capacityAh: 2.5, amps: 1.25, fullV: 4.2, endA: 0.125, ohms: 0.06 });
    const found = judgeCharge(log, { chemistry: 'li-ion-4.20', ratedAh: 2.5 });
    if (!found.ok) throw new Error(found.code);
    expect(found.end!.amps * 1e3).toBeCloseTo(125, -1);
    expect(found.end).toMatchObject({ terminated: true });
    expect(found.end!.heldV).toBeCloseTo(4.2, 2);
    expect(found.phases.map(({ kind }) => kind)).toEqual(['constant-current', 'constant-voltage', 'rest']);
    expect(CHEMISTRIES['li-ion-4.20']).toMatchObject({ fullV: 4.2, emptyV: 2.5 });
  });

  it('reads a gentle start at a fifth and an end at a tenth, as a linear charger does', () => {
    const log = chargeOf({ capacityAh: 1, amps: 0.5, fullV: 4.2, endA: 0.05, ohms: 0.1, gentleA: 0.1, startSoc: -0.02 });
    const found = judgeCharge(log, { chemistry: 'li-ion-4.20', ratedAh: 1 });
    if (!found.ok) throw new Error(found.code);
    expect(found.phases.map(({ kind }) => kind)).toEqual(['gentle', 'constant-current', 'constant-voltage', 'rest']);
    expect(found.phases[0]!.meanA / found.phases[1]!.meanA).toBeCloseTo(0.2, 2);
    expect(found.end!.amps / 0.5).toBeCloseTo(0.1, 1);
  });

  it('stops at the zones of the charging guide, below 0 and above 60 °C, and speaks up above 45 °C', () => {
    const alarms = (celsius: number) => {
      const log = chargeOf({ capacityAh: 1, amps: 0.5, fullV: 4.2, endA: 0.05, ohms: 0.1 }).map((row) => ({ ...row, celsius }));
      const found = judgeCharge(log, { chemistry: 'li-ion-4.20' });
      return found.ok ? found.alarms.map(({ kind }) => kind) : [];
    };
    expect(alarms(-1)).toEqual(['too-cold-to-charge']);
    expect(alarms(25)).toEqual([]);
    expect(alarms(46)).toEqual(['hot']);
    expect(alarms(61)).toEqual(['too-hot-to-charge', 'hot']);
  });

  it('is danger between a full cell and where a protector cuts, 4.25 to 4.35 V', () => {
    expect(CHEMISTRIES['li-ion-4.20'].overV).toBe(4.25);
    const log = chargeOf({ capacityAh: 1, amps: 0.5, fullV: 4.3, endA: 0.05, ohms: 0.1 });
    const found = judgeCharge(log, { chemistry: 'li-ion-4.20' });
    expect(found.ok && found.alarms.map(({ kind }) => kind)).toEqual(['over-voltage']);
    expect(found.ok && found.verdicts.charger).toMatchObject({ state: 'bad', reason: 'over-voltage' });
  });
});

describe('sending a cell', () => {
  it('counts 3.7 V and 1.3 Ah as 4.81 Wh, small, in equipment as UN 3481', () => {
    expect(cellShipping(3.7, 1.3, 1, 'in-device', true)).toEqual({
      wattHours: expect.closeTo(4.81, 9),
      un: 3481,
      small: true,
      mayBeSent: true,
    });
    expect(cellShipping(3.7, 1.3, 1, 'alone', true).un).toBe(3480);
  });

  it('has its limits at 20 Wh for a cell and 100 Wh for a battery', () => {
    const small = (wattHours: number, cells: number) => cellShipping(1, wattHours, cells, 'in-device', true).small;
    expect([small(20, 1), small(20.1, 1), small(100, 2), small(100.1, 2)]).toEqual([true, false, true, false]);
    expect(CELL_LIMITS).toEqual({ cellWh: 20, batteryWh: 100, packageKg: 5, dropM: 1.2 });
  });

  it('is out of the question for a damaged one', () => {
    expect(cellShipping(3.7, 1.3, 1, 'in-device', false).mayBeSent).toBe(false);
  });
});
