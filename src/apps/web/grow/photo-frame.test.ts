import { describe, expect, it } from 'vitest';
import type { Frame, Place } from '../board/frame.ts';
import type { Spot } from '../fit/photo-marks.ts';
import { backFrame, boardSize, frontFrame, onBoard, onPhoto, photoMatrix, worstMiss, type PhotoMarks } from './photo-frame.ts';

const marks = (more: Partial<PhotoMarks>): PhotoMarks => ({ size: [1000, 800], scale: null, corners: [], pairs: [], ...more });
const scale = { from: { x: 0, y: 0 }, to: { x: 200, y: 0 }, mm: 10 };
const close = (place: Place, x: number, y: number): void => {
  expect(place.x).toBeCloseTo(x, 9);
  expect(place.y).toBeCloseTo(y, 9);
};

/** A board of 40 × 30 mm at 20 px a mm, turned on the photo against the clock, its lower left corner at (100, 700). */
const TURN = (8 * Math.PI) / 180;
const seen = (x: number, y: number): Spot => ({
  x: 100 + 20 * (x * Math.cos(TURN) - y * Math.sin(TURN)),
  y: 700 - 20 * (x * Math.sin(TURN) + y * Math.cos(TURN)),
});
const turned = marks({ scale, corners: [seen(0, 0), seen(40, 0), seen(0, 30)] });

/** The same board from behind at 10 px a mm, turned and moved. */
const behind = (x: number, y: number): Spot => {
  const [right, up] = [40 - x, y];
  return { x: 50 + 10 * (right * Math.cos(TURN) - up * Math.sin(TURN)), y: 600 - 10 * (right * Math.sin(TURN) + up * Math.cos(TURN)) };
};
const pair = (x: number, y: number) => ({ front: seen(x, y), back: behind(x, y) });

describe('the photo of the front', () => {
  it('lies on the board by its scale alone, the whole photo being the board', () => {
    const frame = frontFrame(marks({ scale }))!;
    close(onBoard(frame, { x: 0, y: 800 }), 0, 0);
    close(onBoard(frame, { x: 1000, y: 0 }), 50, 40);
    expect(boardSize(frame, marks({ scale }))).toEqual({ width: 50, height: 40 });
  });

  it('is turned upright by the corners of the board, which also say its size', () => {
    const frame = frontFrame(turned)!;
    close(onBoard(frame, seen(12, 7)), 12, 7);
    const { x, y } = onPhoto(frame, { x: 12, y: 7 });
    close({ x, y }, seen(12, 7).x, seen(12, 7).y);
    const { width, height } = boardSize(frame, turned);
    close({ x: width, y: height }, 40, 30);
  });

  it('has no place without a scale, and none with both ends of it in one spot', () => {
    expect(frontFrame(marks({}))).toBeNull();
    expect(frontFrame(marks({ scale: { ...scale, to: scale.from } }))).toBeNull();
  });
});

describe('the photo of the back', () => {
  const front = frontFrame(turned)!;

  it('lies under the front by two holes that both show, whatever its own scale and turn', () => {
    const two = [pair(3, 3), pair(37, 27)];
    const back = backFrame(front, marks({ pairs: two }))!;
    close(onBoard(back, behind(10, 20)), 10, 20);
    const { x, y } = onPhoto(back, { x: 10, y: 20 });
    close({ x, y }, behind(10, 20).x, behind(10, 20).y);
    expect(worstMiss(front, back, two)).toBeCloseTo(0, 9);
  });

  it('says by how much more holes miss each other', () => {
    const off = { front: seen(20, 15), back: { x: behind(20, 15).x + 6, y: behind(20, 15).y } };
    const pairs = [pair(3, 3), pair(37, 3), pair(3, 27), pair(37, 27), off];
    const back = backFrame(front, marks({ pairs }))!;
    expect(worstMiss(front, back, pairs)).toBeGreaterThan(0.4);
    expect(worstMiss(front, back, pairs)).toBeLessThan(0.6);
  });

  it('needs its own scale where only one hole shows, and cannot be laid without any', () => {
    const upright = frontFrame(marks({ scale }))!;
    const one = [{ front: { x: 400, y: 400 }, back: { x: 100, y: 100 } }];
    expect(backFrame(upright, marks({ pairs: one }))).toBeNull();
    expect(backFrame(upright, marks({ scale }))).toBeNull();
    const back = backFrame(upright, marks({ pairs: one, scale }))!;
    close(onBoard(back, { x: 120, y: 60 }), 20 - 1, 20 + 2);
  });
});

it('a photo is drawn where its pixels lie, seen from either side', () => {
  const front = frontFrame(turned)!;
  const back = backFrame(front, marks({ pairs: [pair(3, 3), pair(37, 27)] }))!;
  const drawnAt = (frame: Frame, matrix: readonly number[], px: Spot): Place => ({
    x: matrix[0]! * px.x + matrix[2]! * px.y + matrix[4]!,
    y: matrix[1]! * px.x + matrix[3]! * px.y + matrix[5]!,
  });
  const frame: Frame = { width: 40, height: 30, side: 'front' };
  close(drawnAt(frame, photoMatrix(front, frame), seen(12, 7)), 12, 23);
  const under: Frame = { ...frame, side: 'back' };
  close(drawnAt(under, photoMatrix(back, under), behind(12, 7)), 28, 23);
});
