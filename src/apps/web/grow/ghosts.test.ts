import { describe, expect, it } from 'vitest';
import { beginEditor, tapped, undone, withBrush } from './editor.ts';
import { acceptedAll, boxOf, ghostAt, isLikeInHand, tappedWithGhosts, uncovered, type Ghost } from './ghosts.ts';

const ghost = (x: number, y: number, w: number, h: number, more: Partial<Ghost> = {}): Ghost => ({
  kind: 'part',
  chance: 0.8,
  reference: null,
  side: 'front',
  outline: [
    { x: x - w / 2, y: y + h / 2 },
    { x: x + w / 2, y: y + h / 2 },
    { x: x + w / 2, y: y - h / 2 },
    { x: x - w / 2, y: y - h / 2 },
  ],
  rows: [],
  ...more,
});
const inHand = withBrush(beginEditor([]), { kind: 'capacitor', value: '100n' });
const lying = ghost(10, 10, 2.4, 1);
const standing = ghost(20, 10, 1, 2.4);

describe('what the photo proposes', () => {
  it('is found under the finger, the likelier one first, on the side that is seen', () => {
    const likelier = ghost(10.2, 10, 2.4, 1, { chance: 0.9 });
    expect(ghostAt([lying, likelier], 'front', { x: 10, y: 10 })).toBe(likelier);
    expect(ghostAt([lying], 'back', { x: 10, y: 10 })).toBeNull();
    expect(ghostAt([lying], 'front', { x: 12, y: 10 })).toBeNull();
  });

  it('takes the part in the hand in its middle and turned as it lies, by a click anywhere on it', () => {
    const { editor, ghosts } = tappedWithGhosts(inHand, [lying, standing], { x: 20.3, y: 10.9 }, 0, false);
    expect(editor.parts.get('C1')).toMatchObject({ x: 20, y: 10, rotation: 90, value: '100n' });
    expect(editor.brush.rotation).toBe(0);
    expect(ghosts).toEqual([lying]);
  });

  it('is waved away by a click with the tool Select, unless a part lies there', () => {
    const select = withBrush(inHand, { tool: 'select' });
    expect(tappedWithGhosts(select, [lying], { x: 10, y: 10 }, 0, false).ghosts).toEqual([]);
    const marked = withBrush(tapped(inHand, { x: 10, y: 10 }), { tool: 'select' });
    const after = tappedWithGhosts(marked, [lying], { x: 10, y: 10 }, 0, false);
    expect(after.ghosts).toEqual([lying]);
    expect([...after.editor.selected]).toEqual(['C1']);
  });

  it('leaves clicks beside it as they were', () => {
    const { editor, ghosts } = tappedWithGhosts(inHand, [lying], { x: 40, y: 40 }, 0, false);
    expect(editor.parts.get('C1')).toMatchObject({ x: 40, y: 40, rotation: 0 });
    expect(ghosts).toEqual([lying]);
  });

  it('is accepted many at once as one step: like the part in the hand where it has its size, else by kind and size', () => {
    const pins = [30, 31, 32].map((x) => ({ x, y: 5 }));
    const all = [
      lying,
      standing,
      ghost(40, 30, 1.6, 1.6, { kind: 'test-point' }),
      ghost(3, 3, 3, 3, { kind: 'hole' }),
      ghost(31, 5, 3, 1, { kind: 'pin-row', rows: [pins] }),
      ghost(50, 20, 7.4, 5.3),
    ];
    const accepted = acceptedAll(inHand, all);
    expect([...accepted.parts.values()].map(({ ref, package: name, rotation, pins: { length } }) => [ref, name, rotation, length])).toEqual(
      [
        ['TP1', 'TP', 0, 0],
        ['U1', 'SOIC-8', 90, 0],
        ['C1', '0603', 0, 0],
        ['C2', '0603', 90, 0],
        ['J1', '', 0, 3],
        ['H1', 'TP', 0, 0],
      ],
    );
    expect(undone(accepted).parts.size).toBe(0);
    expect(uncovered(all, accepted)).toEqual([]);
    expect(uncovered(all, beginEditor([]))).toHaveLength(6);
  });

  it('brings the reference that is printed beside it, and with it the kind, unless another part has it', () => {
    const printed = ghost(10, 10, 2.4, 1, { reference: 'C12' });
    expect([...tappedWithGhosts(inHand, [printed], { x: 10, y: 10 }, 0, false).editor.parts.keys()]).toEqual(['C12']);
    const all = [
      ghost(10, 30, 2.4, 1, { reference: 'C12' }),
      ghost(10, 20, 2.4, 1, { reference: 'C12' }),
      ghost(10, 10, 2.4, 1, { reference: 'R5' }),
    ];
    expect([...acceptedAll(inHand, all).parts.keys()]).toEqual(['C12', 'C1', 'R5']);
  });

  it('is like the part in the hand by its size, whichever way it lies', () => {
    expect([lying, standing, ghost(0, 0, 5, 4)].map((each) => isLikeInHand(each, inHand))).toEqual([true, true, false]);
    expect(boxOf(standing)).toMatchObject({ x: 20, y: 10, w: 1 });
  });
});
