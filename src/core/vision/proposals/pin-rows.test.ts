import { describe, expect, it } from 'vitest';
import type { Patch } from '../colour/white-balance.ts';
import { aroundRows, facingRows, pinRowsOf } from './pin-rows.ts';

const PER_MM = 10;
const pad = (x: number, y: number, w = 6, h = 15): Patch => ({ left: x - w / 2, top: y - h / 2, right: x + w / 2, bottom: y + h / 2 });
const rowAt = (y: number, count: number, pitch = 12.7): Patch[] => Array.from({ length: count }, (_, k) => pad(50 + pitch * k, y));

describe('rows of pins', () => {
  it('are found once each, from the first pin to the last, along x and along y, with their pitch', () => {
    const upright = rowAt(0, 5).map(({ left, top, right, bottom }) => ({ left: top + 300, top: left, right: bottom + 300, bottom: right }));
    const rows = pinRowsOf([...rowAt(40, 7), ...upright], PER_MM);
    expect(rows.map(({ along, pins }) => [along, pins.length])).toEqual([
      ['x', 7],
      ['y', 5],
    ]);
    expect(rows[0]!.pitch).toBeCloseTo(12.7, 9);
  });

  it('are neither two places nor places of unlike size nor places off the line', () => {
    expect(pinRowsOf(rowAt(40, 2), PER_MM)).toEqual([]);
    expect(pinRowsOf([pad(50, 40), pad(62, 40), pad(74, 40, 20, 40)], PER_MM)).toEqual([]);
    expect(pinRowsOf([pad(50, 40), pad(62, 40), pad(74, 52)], PER_MM)).toEqual([]);
  });

  it('face each other where they run side by side over the same stretch, as on a chip', () => {
    const rows = pinRowsOf([...rowAt(40, 4), ...rowAt(95, 4)], PER_MM);
    const pairs = facingRows(rows, PER_MM);
    expect(pairs).toHaveLength(1);
    expect(aroundRows(pairs[0]!)).toEqual({ left: 47, top: 32.5, right: 50 + 3 * 12.7 + 3, bottom: 102.5 });
    const shifted = rowAt(95, 4).map(({ left, top, right, bottom }) => ({ left: left + 60, top, right: right + 60, bottom }));
    expect(facingRows(pinRowsOf([...rowAt(40, 4), ...shifted], PER_MM), PER_MM)).toEqual([]);
  });
});
