import { describe, expect, it } from 'vitest';
import type { ReferenceReading } from '../models/index.ts';
import { behaviourOf } from '../models/behaves-by-mode.ts';
import { blocksOfSlot, deviceModelOf } from './device-model.ts';
import { pocketModel } from './testing/pocket-model.ts';

const at = (values: readonly (number | null)[], mode: ReferenceReading['mode'] = 'volts'): ReferenceReading[] =>
  values.map((value, i) => ({ board: `b${i}`, point: 'vsys', mode, value }));

const referenceOn = (readings: readonly ReferenceReading[]) => deviceModelOf(pocketModel({}, readings)).points[0]!.reference;

describe('a model for diagnosis', () => {
  it('carries every fault, function, check and remedy of the file, with the prices of the parts', () => {
    const { file } = pocketModel();
    const device = deviceModelOf(pocketModel());
    expect(device.faults.map(({ id }) => id)).toEqual(file.faults.map(({ id }) => id));
    expect(device.functions[0]!.needs).toEqual([['battery'], ['switch'], ['converter']]);
    expect(device.checks.map(({ id, kind }) => [id, kind])).toContainEqual(['measure-vsys', 'measure']);
    expect(device.remedies.find(({ id }) => id === 'new-battery')!.partsCostMinor).toBe(450);
    expect(blocksOfSlot(file, 'board')).toEqual(['switch', 'converter', 'processor', 'slot-contacts']);
  });

  it('lets one healthy block of an "any" need do', () => {
    const model = pocketModel({ functions: [{ id: 'power', name: 'Power', needs: [{ any: ['battery', 'converter'] }, 'switch'] }] });
    expect(deviceModelOf(model).functions[0]!.needs).toEqual([['battery', 'converter'], ['switch']]);
  });

  it('knows how each mode behaves, and prefers what the model states', () => {
    const fault = { id: 'x', name: 'x', block: 'battery', mode: 'dead', rate: 0.1, seen: {}, shifts: {} } as const;
    const byMode = behaviourOf(fault);
    expect(byMode.works + byMode.fails + byMode['comes-and-goes']).toBeCloseTo(1, 12);
    expect(behaviourOf({ ...fault, mode: 'dirty-contact' })['comes-and-goes']).toBeGreaterThan(byMode['comes-and-goes']);
    expect(behaviourOf({ ...fault, behaves: { works: 0.2, comes_and_goes: 0.2, fails: 0.4 } })).toEqual({
      works: 0.25,
      fails: 0.5,
      'comes-and-goes': 0.25,
    });
  });
});

describe('the reference of a point', () => {
  it('is the median of the good boards, with the spread of the median absolute deviation', () => {
    const reference = referenceOn(at([3.0, 3.2, 3.3, 3.4, 3.9]));
    expect(reference!.mean).toBe(3.3);
    expect(reference!.spread).toBeCloseTo(1.4826 * 0.1, 6);
    expect(reference!.boards).toBe(5);
  });

  it('is not moved by one wild board', () => {
    const calm = referenceOn(at([3.28, 3.29, 3.3, 3.31, 3.32]))!;
    const wild = referenceOn(at([3.28, 3.29, 3.3, 3.31, 12]))!;
    expect(Math.abs(wild.mean! - calm.mean!)).toBeLessThan(0.011);
    expect(wild.spread).toBeLessThan(2 * calm.spread);
  });

  it('is never sharper than the meter, and wider where one board says all', () => {
    const alike = referenceOn(at([3.3, 3.3, 3.3, 3.3]))!;
    expect(alike.spread).toBeCloseTo(3.3 * 0.005 + 0.01, 9);
    expect(referenceOn(at([3.3]))!.spread).toBeGreaterThan(3 * alike.spread);
  });

  it('says OL where good boards read OL, and nothing where none was measured in that mode', () => {
    expect(referenceOn(at([null, null, 3.3]))).toEqual({ mean: null, spread: 0, boards: 3 });
    expect(referenceOn(at([3.3, 3.3], 'ohms'))).toBeNull();
    expect(referenceOn([])).toBeNull();
  });
});
