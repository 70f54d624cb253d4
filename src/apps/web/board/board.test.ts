import { describe, expect, it } from 'vitest';
import { drawnParts, hitAt, type PlacedPart } from './drawn-part.ts';
import { CLOSEST, closer, MARGIN_MM, moved, toPicture, turnedOver, viewBox, wholeView, type Frame } from './frame.ts';
import { blockUnder, boxOf, dragged, EMPTY_DRAFT, fromBox, polygonOf, tapped, type RegionDraft } from './region-draft.ts';

const frame: Frame = { width: 70, height: 55, side: 'front' };
const back: Frame = { ...frame, side: 'back' };
const part = (ref: string, x: number, y: number, more: Partial<PlacedPart> = {}): PlacedPart => ({
  ref,
  x_mm: x,
  y_mm: y,
  rotation_deg: 0,
  side: 'front',
  value: '',
  package: '0603',
  block: 'sound',
  nets: ['a', 'b'],
  ...more,
});

describe('the frame of a board', () => {
  it('has its lower left corner at the lower left of the front, and at the lower right of the back', () => {
    expect(toPicture(frame, { x: 0, y: 0 })).toEqual({ x: 0, y: 55 });
    expect(toPicture(back, { x: 0, y: 0 })).toEqual({ x: 70, y: 55 });
    expect(toPicture(back, toPicture(back, { x: 12, y: 34 }))).toEqual({ x: 12, y: 34 });
  });

  it('is seen whole at first, with room around it', () => {
    expect(viewBox(frame, wholeView(frame))).toBe(`${-MARGIN_MM} ${-MARGIN_MM} ${70 + 2 * MARGIN_MM} ${55 + 2 * MARGIN_MM}`);
  });

  it('comes closer with the point under the fingers staying where it is, and no closer than can be read', () => {
    const about = { x: 30, y: 20 };
    const before = wholeView(frame);
    const near = closer(frame, before, 2, about);
    const share = (view: { x: number; zoom: number }): number => (about.x - view.x) * view.zoom;
    expect(near.zoom).toBe(2);
    expect(share(near)).toBeCloseTo(share(before), 9);
    expect(closer(frame, near, 100).zoom).toBe(CLOSEST);
    expect(closer(frame, near, 0.01)).toEqual(wholeView(frame));
  });

  it('never moves off the board, and turned over shows the same place', () => {
    const near = closer(frame, wholeView(frame), 4);
    expect(moved(frame, near, { x: 999, y: 0 }).x).toBeLessThanOrEqual(70 + MARGIN_MM);
    expect(moved(frame, wholeView(frame), { x: 5, y: 5 })).toEqual(wholeView(frame));
    expect(turnedOver(frame, { x: 10, y: 9, zoom: 3 })).toEqual({ x: 60, y: 9, zoom: 3 });
  });
});

describe('what a finger points at', () => {
  const parts = drawnParts([
    part('R1', 10, 10),
    part('U1', 30, 30, { package: 'SOIC-8', nets: Array.from({ length: 8 }, (_, i) => `n${i}`) }),
    part('R2', 10, 10, { side: 'back' }),
  ]);

  it('is the pad under it, the body beside the pads, the nearest pad within reach, or nothing', () => {
    expect(hitAt(parts, 'front', { x: 9.2, y: 10 }, 1)).toMatchObject({ part: { ref: 'R1' }, pin: 1 });
    expect(hitAt(parts, 'front', { x: 30, y: 30 }, 0.5)).toMatchObject({ part: { ref: 'U1' }, pin: null });
    expect(hitAt(parts, 'front', { x: 8.3, y: 10 }, 1)).toMatchObject({ part: { ref: 'R1' }, pin: 1 });
    expect(hitAt(parts, 'front', { x: 50, y: 50 }, 1)).toBeNull();
  });

  it('lies on the side that is seen', () => {
    expect(hitAt(parts, 'back', { x: 9.2, y: 10 }, 1)).toMatchObject({ part: { ref: 'R2' }, pin: 2 });
    expect(hitAt(parts, 'back', { x: 30, y: 30 }, 1)).toBeNull();
  });

  it('has the turn of its part in mind', () => {
    const turned = drawnParts([part('R1', 10, 10, { rotation_deg: 90 })]);
    expect(hitAt(turned, 'front', { x: 10, y: 9.2 }, 0.1)).toMatchObject({ pin: 1 });
    expect(hitAt(turned, 'front', { x: 9.2, y: 10 }, 0.1)).toBeNull();
  });
});

describe('an area that is drawn', () => {
  const size = { x: 70, y: 55 };

  it('is a rectangle after two taps or one stroke, kept on the board; a third tap begins anew', () => {
    const two = tapped(tapped(EMPTY_DRAFT, { x: 5.04, y: 6 }, size), { x: 99, y: -3 }, size);
    expect(polygonOf(two)).toEqual([
      [5, 6],
      [70, 6],
      [70, 0],
      [5, 0],
    ]);
    expect(polygonOf(dragged({ x: 5, y: 6 }, { x: 70, y: 0 }, size))).toEqual(polygonOf(two));
    expect(tapped(two, { x: 1, y: 2 }, size).corners).toEqual([[1, 2]]);
  });

  it('may go corner by corner', () => {
    let corners: RegionDraft = { shape: 'corners', corners: [] };
    for (const at of [1, 2, 3, 4]) corners = tapped(corners, { x: at, y: at * at }, size);
    expect(polygonOf(corners)).toEqual([
      [1, 1],
      [2, 4],
      [3, 9],
      [4, 16],
    ]);
  });

  it('is told in numbers, and numbers draw it', () => {
    const box = { left: 5, bottom: 3, width: 12.5, height: 8 };
    expect(boxOf(fromBox(box))).toEqual(box);
    expect(boxOf(EMPTY_DRAFT)).toEqual({ left: 0, bottom: 0, width: 0, height: 0 });
  });

  it('belongs to the block of most parts in it, else to that of the nearest part', () => {
    const parts = drawnParts([
      part('R1', 10, 10),
      part('R2', 14, 10),
      part('C1', 12, 12, { block: 'keys' }),
      part('C2', 60, 50, { block: 'slot' }),
    ]);
    const over = (box: Parameters<typeof fromBox>[0]) => blockUnder(parts, { side: 'front', polygon: polygonOf(fromBox(box)) });
    expect(over({ left: 8, bottom: 8, width: 8, height: 6 })).toBe('sound');
    expect(over({ left: 50, bottom: 40, width: 2, height: 2 })).toBe('slot');
    expect(
      blockUnder([], {
        side: 'front',
        polygon: [
          [0, 0],
          [1, 0],
          [1, 1],
        ],
      }),
    ).toBeNull();
  });
});
