import fc from 'fast-check';
import { expect, it } from 'vitest';
import { randomStream } from '../numeric/index.ts';
import { padCover } from './pad-cover.ts';
import { PLAIN_PAD, type Pad, type Point } from './pattern.ts';
import { areaOf, sharedArea, signedArea, triangles, unionOf } from './polygon.ts';

const size = fc.double({ min: 0.2, max: 3, noNaN: true });
const place = fc.double({ min: -1, max: 1, noNaN: true });
const pad: fc.Arbitrary<Pad> = fc.record({
  name: fc.constant('1'),
  kind: fc.constant('surface' as const),
  shape: fc.constantFrom('rect' as const, 'round-rect' as const, 'oval' as const),
  xMm: place,
  yMm: place,
  wMm: size,
  hMm: size,
  turnDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  cornerMm: fc.double({ min: 0, max: 0.5, noNaN: true }),
  drill: fc.constant(null),
  rings: fc.constant([]),
  side: fc.constant('front' as const),
});

/** Whether a point lies in any of some convex pieces, by the side of each edge. */
const lies = (pieces: ReturnType<typeof padCover>, [x, y]: Point): boolean =>
  pieces.some((piece) =>
    piece.every(([ax, ay], i) => {
      const [bx, by] = piece[(i + 1) % piece.length]!;
      return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0;
    }),
  );

it('shared and joined areas agree with points thrown at random', () => {
  const random = randomStream('areas');
  const points = Array.from({ length: 20_000 }, (): Point => [random() * 8 - 4, random() * 8 - 4]);
  const share = (test: (point: Point) => boolean): number => (64 * points.filter(test).length) / points.length;
  fc.assert(
    fc.property(pad, pad, (a, b) => {
      const [one, other] = [padCover(a), padCover(b)];
      const shared = sharedArea(one, other);
      expect(Math.abs(shared - share((p) => lies(one, p) && lies(other, p)))).toBeLessThan(0.25);
      expect(areaOf(unionOf([one, other]))).toBeCloseTo(areaOf(one) + areaOf(other) - shared, 6);
    }),
    { numRuns: 25 },
  );
});

it('an arc falls short of its circle by less than a hundredth', () => {
  const circle = padCover({ ...PLAIN_PAD, name: '1', shape: 'circle', xMm: 0, yMm: 0, wMm: 2, hMm: 2 });
  expect(areaOf(circle) / Math.PI).toBeGreaterThan(0.99);
  expect(areaOf(circle)).toBeLessThan(Math.PI);
});

it('a ring with dents is cut into triangles of the same area, whichever way its corners go', () => {
  const dented: Point[] = [
    [0, 0],
    [4, 0],
    [4, 3],
    [2, 1],
    [0, 3],
  ];
  for (const ring of [dented, dented.toReversed()]) expect(areaOf(triangles(ring))).toBeCloseTo(Math.abs(signedArea(dented)), 9);
});
