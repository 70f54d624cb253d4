import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packageNamed, packageNames } from './packages.ts';
import { courtyardOf, padsOf, placementOf, type Placed } from './pads.ts';

const at = (more: Partial<Placed>): Placed => ({ ref: 'U1', x: 10, y: 20, rotation: 0, side: 'front', package: '0603', nets: [], ...more });
const placeOf = (part: Placed, pin: number): number[] => {
  const pad = padsOf(part).find((each) => each.pin === pin)!;
  return [pad.x, pad.y].map((v) => Math.round(v * 100) / 100);
};
const ALL = packageNames().map((name) => name.replace(/-n$/, '-12'));

describe('a package of the table', () => {
  it.each(ALL)('%s has pins from 1 on without a gap, its pads apart and inside its room', (name) => {
    const { pads, court } = packageNamed(name)!;
    const pins = new Set(pads.flatMap(({ pin }) => (pin === null ? [] : [pin])));
    expect([...pins].sort((a, b) => a - b)).toEqual(Array.from(pins, (_, i) => i + 1));
    for (const pad of pads) {
      expect(Math.abs(pad.x) + pad.w / 2).toBeLessThanOrEqual(court.w / 2 + 1e-9);
      expect(Math.abs(pad.y) + pad.h / 2).toBeLessThanOrEqual(court.h / 2 + 1e-9);
      const touching = pads.filter(
        (other) => other !== pad && Math.abs(other.x - pad.x) < (other.w + pad.w) / 2 && Math.abs(other.y - pad.y) < (other.h + pad.h) / 2,
      );
      expect(touching).toEqual([]);
    }
  });

  it.each(['0604', 'SLOT', 'SLOT-0', 'SLOT-999', 'constructor', '__proto__-3', 'QFP-33'])('is not called %s', (name) => {
    expect(packageNamed(name)).toBeUndefined();
  });

  it('counts the pins of a chip against the clock from the lower left', () => {
    const chip = at({ package: 'qfp-32', x: 0, y: 0 });
    expect(placeOf(chip, 1)).toEqual([-2.8, -4.05]);
    expect(placeOf(chip, 9)).toEqual([4.05, -2.8]);
    expect(placeOf(chip, 17)).toEqual([2.8, 4.05]);
    expect(placeOf(chip, 25)).toEqual([-4.05, 2.8]);
    expect(placeOf(at({ package: 'SOIC-8', x: 0, y: 0 }), 8)).toEqual([-1.9, 2.7]);
  });
});

describe('the pads of a placed part', () => {
  it('are turned against the clock about its place, and carry its nets', () => {
    expect(padsOf(at({ rotation: 90, nets: ['a', null] }))).toEqual([
      { ref: 'U1', pin: 1, net: 'a', side: 'front', x: 10, y: 19.2, w: 0.95, h: 0.8 },
      { ref: 'U1', pin: 2, net: null, side: 'front', x: 10, y: 20.8, w: 0.95, h: 0.8 },
    ]);
  });

  it('are mirrored on the back, before they are turned', () => {
    expect(placeOf(at({ side: 'back' }), 1)).toEqual([10.8, 20]);
    expect(placeOf(at({ side: 'back', rotation: 90 }), 1)).toEqual([10, 20.8]);
    expect(placeOf(at({ side: 'back', package: 'SOT-23' }), 3)).toEqual([10, 21.1]);
  });

  it('come in the form that the search for neighbours wants, without anchors, free pins and parts that are off the board', () => {
    const common = { rotation: 0, value: 'x', block: 'b', elements: [] };
    const parts = [
      { ...common, ref: 'J1', x: 5, y: 5, side: 'front' as const, package: 'PORT-3', nets: ['v', null, '0'] },
      { ...common, ref: 'BT1', x: 0, y: 0, side: 'off' as const, package: '', nets: [] },
    ];
    expect(placementOf({ parts }).pads.map(({ component, pin, net }) => `${component}.${pin} ${net}`)).toEqual(['J1.1 v', 'J1.3 0']);
  });

  it('stay inside the room of the part, however it is turned', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ALL),
        fc.integer({ min: -360, max: 360 }),
        fc.constantFrom('front', 'back'),
        (name, rotation, side) => {
          const part = at({ package: name, rotation, side: side as 'front' });
          const room = courtyardOf(part);
          for (const pad of padsOf(part)) {
            expect(Math.abs(pad.x - room.x)).toBeLessThanOrEqual(room.w / 2 + 1e-9);
            expect(Math.abs(pad.y - room.y)).toBeLessThanOrEqual(room.h / 2 + 1e-9);
          }
        },
      ),
    );
  });
});
