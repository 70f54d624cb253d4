import { expect, it } from 'vitest';
import { ghostsOf, outlineQuestion } from './find-ghosts.ts';
import { backFrame, frontFrame } from './photo-frame.ts';

const BOARD = { width_mm: 40, height_mm: 30 };
const scale = { from: { x: 0, y: 0 }, to: { x: 200, y: 0 }, mm: 20 };
/** 10 px a mm, the board from (50, 350) to the upper right. */
const front = frontFrame({
  size: [500, 400],
  scale,
  corners: [
    { x: 50, y: 350 },
    { x: 450, y: 350 },
    { x: 50, y: 50 },
  ],
  pairs: [],
})!;

it('a photo is asked at its own size, within the board', () => {
  const { px_per_mm, board } = outlineQuestion({ lies: front }, BOARD, 2);
  expect(px_per_mm).toBeCloseTo(20, 9);
  expect(Object.values(board).map(Math.round)).toEqual([100, 100, 900, 700]);
});

it('proposals come to lie on the board, those of the back as seen through from the front', () => {
  const answer = { kind: 'part', chance: 0.7, reference: 'C7', outline_px: [[100, 700]], rows_px: [[[300, 500]]] } as const;
  const [ghost] = ghostsOf([answer], front, 2);
  expect(ghost).toMatchObject({ side: 'front', reference: 'C7' });
  expect([ghost!.outline[0]!.x, ghost!.outline[0]!.y].map((mm) => Number(mm.toFixed(6)))).toEqual([0, 0]);
  expect([ghost!.rows[0]![0]!.x, ghost!.rows[0]![0]!.y].map((mm) => Number(mm.toFixed(6)))).toEqual([10, 10]);
  const pairs = [
    { front: { x: 50, y: 350 }, back: { x: 450, y: 350 } },
    { front: { x: 450, y: 50 }, back: { x: 50, y: 50 } },
  ];
  const back = backFrame(front, { size: [500, 400], scale: null, corners: [], pairs })!;
  const [behind] = ghostsOf([answer], back, 2);
  expect(behind!.side).toBe('back');
  expect(Number(behind!.outline[0]!.x.toFixed(6))).toBe(40);
});
