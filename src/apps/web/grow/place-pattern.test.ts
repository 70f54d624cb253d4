import { describe, expect, it } from 'vitest';
import { given, whichFit } from '../../../bench/fit/index.ts';
import type { EditorPart } from './editor-part.ts';
import { placeOf } from './place-pattern.ts';

const socket: EditorPart = {
  ref: 'J4',
  kind: 'connector',
  value: '',
  package: '',
  side: 'front',
  x: 22,
  y: 10,
  rotation: 0,
  block: '',
  pins: [20, 22, 24].map((x) => [x, 10] as const),
};

describe('a marked part as a place for parts', () => {
  it('has its pads about its middle, half as wide as they are apart', () => {
    expect(placeOf(socket).pads.map(({ name, xMm, yMm, wMm }) => [name, xMm, yMm, wMm])).toEqual([
      ['1', -2, 0, 1],
      ['2', 0, 0, 1],
      ['3', 2, 0, 1],
    ]);
  });

  it('is seen from its own side', () => {
    expect(placeOf({ ...socket, side: 'back' }).pads.map(({ name, xMm }) => [name, xMm])).toEqual([
      ['1', 2],
      ['2', -0],
      ['3', -2],
    ]);
  });

  it('takes a part with the same pitch, turned as it may be, and refuses another pitch', () => {
    const wide = { ...socket, pins: [19.5, 22, 24.5].map((x) => [x, 10] as const) };
    const turned = { ...socket, pins: [8, 10, 12].map((y) => [22, y] as const) };
    const { fits } = whichFit(placeOf(socket), [given('wide', placeOf(wide)), given('turned', placeOf(turned))]);
    expect(fits.map(({ name, answer }) => [name, answer])).toEqual([
      ['turned', 'fits'],
      ['wide', 'does-not-line-up'],
    ]);
  });
});
