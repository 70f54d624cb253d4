import fc from 'fast-check';
import { expect, it } from 'vitest';
import { LandPattern } from '../events/index.ts';
import { FitView } from '../views/index.ts';
import { answerFit, PART_KINDS } from './index.ts';

const oneOf = fc.constantFrom;
const at = fc.oneof(fc.double({ min: -20, max: 20, noNaN: true }), oneOf(0, 0.5, 1, 2));
const size = fc.oneof(fc.double({ min: 0.01, max: 5, noNaN: true }), oneOf(0.01, 0.5, 1));
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const corner = fc.tuple(at, at);
const pad = fc.record({
  pin: oneOf('', '1', '2', '3', 'A1', 'constructor'),
  x_mm: at,
  y_mm: at,
  w_mm: size,
  h_mm: size,
  kind: oneOf('surface', 'surface', 'through', 'peg'),
  shape: oneOf('rect', 'round-rect', 'oval', 'circle', 'outline'),
  turn_deg: oneOf(0, 90, 45, -33),
  corner_mm: oneOf(0, 0.1, 100),
  side: oneOf('front', 'front', 'back'),
  net: maybe(oneOf('GND', 'VBUS')),
  drill: maybe(fc.record({ w_mm: size, h_mm: size, dx_mm: at, dy_mm: at })),
  rings: maybe(fc.array(fc.array(corner, { maxLength: 5 }), { maxLength: 2 })),
});
const pattern = fc
  .record({
    name: fc.constant('any'),
    kind: oneOf(...PART_KINDS),
    basis: oneOf('lands', 'feet'),
    numbered: fc.boolean(),
    pads: fc.array(pad, { minLength: 1, maxLength: 6 }),
  })
  .map((made) => LandPattern.safeParse(made))
  .filter(({ success }) => success)
  .map(({ data }) => data!);

it('whatever the log takes as a pattern gets an answer that keeps the law of a fit, and one that the interface can send', () => {
  fc.assert(
    fc.property(pattern, pattern, (place, part) => {
      const answer = answerFit({ place, parts: [part, place], drawer: false, list: '' }, { bags: new Map(), linesOf: () => [] });
      expect(FitView.safeParse(JSON.parse(JSON.stringify(answer))).error).toBeUndefined();
    }),
    { numRuns: 60 },
  );
});
