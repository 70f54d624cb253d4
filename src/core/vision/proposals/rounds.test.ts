import { describe, expect, it } from 'vitest';
import { gaussianBlur } from '../image/blur.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { roundsOf } from './rounds.ts';

/** Discs of given brightness on grey, a little out of focus. */
function discs(...drawn: readonly (readonly [x: number, y: number, r: number, value: number])[]): Plane {
  const plane = planeOf(160, 120, 90);
  for (let y = 0; y < 120; y++)
    for (let x = 0; x < 160; x++)
      for (const [cx, cy, r, value] of drawn) if (Math.hypot(x - cx, y - cy) <= r) plane.data[y * 160 + x] = value;
  return gaussianBlur(plane, 0.8);
}
const ALL = { left: 0, top: 0, right: 160, bottom: 120 };

describe('round edges', () => {
  it('are found with middle and radius, bright and dark told apart, and none in a square', () => {
    const plane = discs([40, 50, 8, 200], [110, 60, 16, 10]);
    const square = planeOf(160, 120, 90);
    for (let y = 30; y < 60; y++) for (let x = 30; x < 60; x++) square.data[y * 160 + x] = 200;
    const found = roundsOf(plane, ALL, 10);
    const near = (x: number, y: number) => found.find((round) => Math.hypot(round.x - x, round.y - y) < 2 && round.radius > 5);
    expect(near(40, 50)).toMatchObject({ dark: false });
    expect(Math.abs(near(40, 50)!.radius - 8)).toBeLessThan(1.6);
    expect(near(110, 60)).toMatchObject({ dark: true });
    expect(Math.abs(near(110, 60)!.radius - 16)).toBeLessThan(1.6);
    expect(roundsOf(square, ALL, 10).filter(({ radius }) => radius > 10)).toEqual([]);
  });

  it('are none on a plain board or outside the board that is looked at', () => {
    expect(roundsOf(planeOf(160, 120, 90), ALL, 10)).toEqual([]);
    expect(roundsOf(discs([110, 60, 16, 10]), { left: 0, top: 0, right: 80, bottom: 120 }, 10)).toEqual([]);
  });
});
