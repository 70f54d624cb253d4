import { describe, expect, it } from 'vitest';
import { assertReckoning } from './assert-reckoning.ts';
import {
  awgDiameter,
  chipSizeMeasured,
  dividerVolts,
  dropOf,
  foilThickness,
  ledResistor,
  nearestInSeries,
  onderdonkFusing,
  preeceFusing,
  readCapacitorCode,
  readResistorCode,
  runTimeHours,
  seriesOf,
  trackCurrent2152,
  trackCurrent2221,
  trackResistance,
  trackWidth2221,
  wireFor,
  wireResistance,
} from './index.ts';

const track = { widthM: 0.5e-3, thicknessM: 35e-6 };

describe('a calculator', () => {
  it.each([
    ['track current', trackCurrent2221(track, 20, 'external')],
    ['track width', trackWidth2221(2, 20, 35e-6, 'internal')],
    ['track current of the later standard', trackCurrent2152(track, 20)],
    ['track resistance', trackResistance({ ...track, lengthM: 0.05 }, 40)],
    ['wire resistance', wireResistance(0.3e-3, 0.2)],
    ['slow fusing', preeceFusing(0.3e-3)],
    ['quick fusing', onderdonkFusing(7e-8, 1)],
    ['divider', dividerVolts({ inV: 5, upper: 10e3, lower: 20e3, tolerance: 0.05, load: 100e3 })],
    ['resistor of a diode', ledResistor(5, 2, 0.01).exact],
    ['run time', runTimeHours({ capacityAh: 1, health: 0.8, cellV: 3.7, load: { watts: 0.5, efficiency: 0.85 } })],
  ])('of %s says value, range, formula, source and where it holds', (_, found) => {
    expect(() => assertReckoning(found)).not.toThrow();
    expect(found.inRange).toBe(true);
  });

  it('refuses what is no number above nought', () => {
    const refused = expect.objectContaining({ code: 'bad-number' });
    expect(() => trackCurrent2221({ ...track, widthM: 0 }, 20, 'external')).toThrow(refused);
    expect(() => trackResistance({ ...track, lengthM: Number.NaN })).toThrow(refused);
    expect(() => trackResistance({ ...track, lengthM: 1 }, -300)).toThrow(refused);
    expect(() => awgDiameter(60)).toThrow(refused);
    expect(() => dividerVolts({ inV: 5, upper: 1, lower: 1, tolerance: 1 })).toThrow(refused);
    expect(() => ledResistor(2, 3, 0.01)).toThrow(refused);
    expect(() => nearestInSeries(-1, 'E12')).toThrow(refused);
    expect(() => onderdonkFusing(1e-7, 1, 1100)).toThrow(refused);
  });

  it('says when it is asked beyond where it holds', () => {
    expect(trackCurrent2221({ widthM: 12e-3, thicknessM: 35e-6 }, 20, 'external').inRange).toBe(false);
    expect(trackCurrent2221(track, 5, 'external').inRange).toBe(false);
    expect(ledResistor(2.2, 2, 0.01).exact.inRange).toBe(false);
    expect(runTimeHours({ capacityAh: 1, health: 1, cellV: 3.7, load: { amps: 2 } }).inRange).toBe(false);
  });
});

describe('a wire for a net', () => {
  it('is the thinnest that loses no more than allowed', () => {
    const choice = wireFor({ currentA: 0.2, lengthM: 0.05, dropV: 0.02 })!;
    expect(choice.dropV).toBeLessThanOrEqual(0.02);
    const thinner = wireResistance(awgDiameter(choice.awg + 1), 0.05, 60).value * 0.2;
    expect(thinner > 0.02 || choice.because === 'density').toBe(true);
    expect(choice.fusingMargin).toBeGreaterThan(5);
  });

  it('is thicker than the drop asks for where it would get warm', () => {
    expect(wireFor({ currentA: 1, lengthM: 0.01, dropV: 0.5 })).toMatchObject({ because: 'density' });
  });

  it('is none where no hand wire carries it', () => {
    expect(wireFor({ currentA: 50, lengthM: 0.1, dropV: 0.1 })).toBeNull();
  });

  it('loses its drop there and back', () => {
    expect(dropOf(0.1, 2)).toEqual({ volts: 0.2, watts: 0.4 });
    expect(dropOf(0.1, 2, 2)).toEqual({ volts: 0.4, watts: 0.8 });
  });

  it('takes foil by the convention that is named', () => {
    expect(foilThickness(2, '1.378-mil')).toBeCloseTo(70e-6, 7);
  });
});

describe('a divider and a diode', () => {
  it('sink with a load, and lie within the worst of both resistors', () => {
    const free = dividerVolts({ inV: 6, upper: 10e3, lower: 20e3, tolerance: 0.01 });
    expect(free.value).toBeCloseTo(4, 12);
    expect(dividerVolts({ inV: 6, upper: 10e3, lower: 20e3, tolerance: 0.01, load: 20e3 }).value).toBeCloseTo(3, 12);
    expect(free.high - free.low).toBeCloseTo(4 * (1 / 3) * 2 * 0.02, 5);
  });

  it('take the next resistor above, never one below', () => {
    const found = ledResistor(5, 2, 0.01);
    expect(found.exact.value).toBe(300);
    expect(found.ohms).toBe(330);
    expect(ledResistor(5, 1.7, 0.01).ohms).toBe(330);
    expect(ledResistor(5.5, 2, 0.01, 'E24').ohms).toBe(360);
    expect(ledResistor(12, 2, 0.0101).ohms).toBe(1000);
  });

  it('find the nearest value as a ratio, also over a decade', () => {
    expect(nearestInSeries(9.4, 'E12')).toBe(10);
    expect(nearestInSeries(0.047, 'E24')).toBe(0.047);
    expect(nearestInSeries(1234, 'E96')).toBe(1240);
    expect([seriesOf(4700), seriesOf(5100), seriesOf(49.9), seriesOf(920), seriesOf(4242)]).toEqual(['E3', 'E24', 'E96', 'E192', null]);
  });
});

describe('marks on parts', () => {
  const readings = (mark: string) => {
    const found = readResistorCode(mark);
    return found.ok ? found.readings.map(({ value, notation }) => `${value} ${notation}`) : [found.code];
  };

  it('that can be read twice are read twice', () => {
    expect(readings('12R')).toEqual(['12 letter-for-point', '1.3 eia-96']);
    expect(readings('0')).toEqual(['0 jumper']);
  });

  it('that are none are refused', () => {
    for (const mark of ['', 'ABC', '97A', '12', 'R', '5R1R2', '00C']) expect(readings(mark)).toEqual(['not-a-code']);
  });

  it('carry a tolerance where a letter or the number of digits says it', () => {
    const tolerance = (mark: string) => {
      const found = readResistorCode(mark);
      return found.ok ? found.readings[0]!.tolerance : undefined;
    };
    expect([tolerance('472'), tolerance('4701'), tolerance('472J'), tolerance('4K7F'), tolerance('4K7')]).toEqual([
      0.05,
      0.01,
      0.05,
      0.01,
      null,
    ]);
  });

  it('of a value in no series hint at a part that stands on its head', () => {
    const found = readResistorCode('901');
    expect(found.ok && found.readings[0]!.why).toContain('upside down');
  });

  it('of capacitors mean pF below ten and shares above', () => {
    const of = (mark: string) => {
      const found = readCapacitorCode(mark);
      return found.ok ? found.readings[0]! : found.code;
    };
    expect(of('4p7C')).toMatchObject({ tolerance: null, toleranceF: 0.25e-12 });
    expect(of('104K')).toMatchObject({ value: 1e-7, tolerance: 0.1 });
    expect(of('1H104J')).toMatchObject({ value: 1e-7, volts: 50, tolerance: 0.05 });
    expect(of('4n7')).toMatchObject({ value: 4.7e-9 });
    expect(of('2u2')).toMatchObject({ value: 2.2e-6 });
    expect([of('107X'), of('n'), of('104Q')]).toEqual(['not-a-code', 'not-a-code', 'not-a-code']);
  });

  it('need not be read where a chip can be measured', () => {
    expect(chipSizeMeasured(1.05, 0.52).imperial).toBe('0402');
    expect(chipSizeMeasured(0.4, 0.2).imperial).toBe('01005');
  });
});
