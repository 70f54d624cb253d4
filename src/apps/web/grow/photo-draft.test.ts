import { describe, expect, it } from 'vitest';
import { beginDraft, clicked, knownOf, marksOf, nudgedLast, shownOn, withoutLast, type PhotoDraft, type PhotoTool } from './photo-draft.ts';

const SIZE = [1000, 800] as const;
const clicks = (tool: PhotoTool, ...spots: readonly (readonly [number, number])[]): PhotoDraft =>
  spots.reduce((draft, [x, y]) => clicked(draft, tool, 'front', { x, y }), beginDraft(null));

describe('marks on a photo of a board', () => {
  it('set the scale by two clicks and the board by three, and begin anew with one more', () => {
    const scaled = clicks('scale', [100, 700], [500, 700]);
    expect(marksOf(scaled, SIZE).scale).toEqual({ from: { x: 100, y: 700 }, to: { x: 500, y: 700 }, mm: 20 });
    expect(knownOf('front', scaled, SIZE, null)).toContain('The board is 50.0 by 40.0 mm. The whole photo counts');
    const cornered = [
      [100, 700],
      [900, 700],
      [100, 100],
    ].reduce((draft, [x, y]) => clicked(draft, 'corners', 'front', { x: x!, y: y! }), scaled);
    expect(knownOf('front', cornered, SIZE, null)).toBe('The scale is good to ± 0.4 %. The board is 40.0 by 30.0 mm.');
    expect(clicked(cornered, 'corners', 'front', { x: 1, y: 2 }).corners).toEqual([{ x: 1, y: 2 }]);
    expect(marksOf(clicked(cornered, 'scale', 'front', { x: 1, y: 2 }), SIZE).scale).toBeNull();
  });

  it('make a pair of a hole on either photo, whichever is clicked first', () => {
    const half = clicked(beginDraft(null), 'holes', 'back', { x: 10, y: 20 });
    expect(half.pairs).toEqual([]);
    const again = clicked(half, 'holes', 'back', { x: 11, y: 20 });
    const pair = clicked(again, 'holes', 'front', { x: 30, y: 40 });
    expect(pair.pairs).toEqual([{ front: { x: 30, y: 40 }, back: { x: 11, y: 20 } }]);
    expect(pair.half).toEqual({});
    const other = clicked(clicked(pair, 'holes', 'front', { x: 1, y: 1 }), 'holes', 'back', { x: 2, y: 2 });
    expect(other.pairs[1]).toEqual({ front: { x: 1, y: 1 }, back: { x: 2, y: 2 } });
    expect(shownOn('back', other, false).pads.map(({ name, xPx }) => [name, xPx])).toEqual([
      ['1', 11],
      ['2', 2],
    ]);
  });

  it('are moved and taken back, the last one first', () => {
    const scaled = clicks('scale', [100, 700], [500, 700]);
    expect(nudgedLast(scaled, 'scale', 'front', { x: -1, y: 0 }).scale[1]).toEqual({ x: 499, y: 700 });
    expect(withoutLast(scaled, 'scale').scale).toEqual([{ x: 100, y: 700 }]);
    const pair = clicked(clicked(beginDraft(null), 'holes', 'front', { x: 1, y: 1 }), 'holes', 'back', { x: 2, y: 2 });
    expect(nudgedLast(pair, 'holes', 'back', { x: 5, y: 0 }).pairs[0]).toEqual({ front: { x: 1, y: 1 }, back: { x: 7, y: 2 } });
    const half = clicked(pair, 'holes', 'front', { x: 9, y: 9 });
    expect(withoutLast(half, 'holes')).toEqual({ ...pair, half: {} });
    expect(withoutLast(pair, 'holes').pairs).toEqual([]);
  });

  it('say how well the back lies under the front, or what is still missing', () => {
    const front = marksOf(clicks('scale', [0, 0], [200, 0]), SIZE);
    const pair = (x: number, y: number, off = 0) => ({ front: { x, y }, back: { x: 1000 - x + off, y } });
    const back = (...pairs: readonly ReturnType<typeof pair>[]): PhotoDraft => ({ ...beginDraft(null), pairs });
    expect(knownOf('back', back(), SIZE, null)).toContain('Set the scale of the front first');
    expect(knownOf('back', back(pair(100, 100)), SIZE, front)).toContain('Mark two holes or more');
    expect(knownOf('back', back(pair(100, 100), pair(900, 700)), SIZE, front)).toContain('A third hole would show how well');
    const three = knownOf('back', back(pair(100, 100), pair(900, 700), pair(900, 100, 10)), SIZE, front);
    expect(Number(/by ([\d.]+) mm/.exec(three)![1])).toBeGreaterThan(0.2);
  });
});
