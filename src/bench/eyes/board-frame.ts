import { fourPointMap, inverted, mapped, type Homography, type Point, type Quad } from '../../core/vision/index.ts';
import type { BoardCorners, BoardSide } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import { packageNamed } from '../models/packages.ts';
import type { PartPlace } from './comparer.ts';

/** How a board lies on a photo: maps between mm of the board and shares of the photo's width. */
export interface BoardFrame {
  readonly toPhoto: Homography;
  readonly toBoard: Homography;
}

/** The frame from the corners of the board on the photo; null where three of them lie on a line. The back is seen mirrored. */
export function boardFrame(
  board: { readonly width_mm: number; readonly height_mm: number },
  side: BoardSide,
  corners: BoardCorners,
): BoardFrame | null {
  const { width_mm: w, height_mm: h } = board;
  const [left, right] = side === 'board-front' ? [0, w] : [w, 0];
  const places: Quad = [
    [left, 0],
    [right, 0],
    [right, h],
    [left, h],
  ];
  const toPhoto = fourPointMap(places, corners as unknown as Quad);
  const toBoard = toPhoto && inverted(toPhoto);
  return toPhoto && toBoard && { toPhoto, toBoard };
}

/** The parts of one side of a model's board as they lie on a photo. */
export function partPlaces(model: Model, side: BoardSide, { toPhoto }: BoardFrame): PartPlace[] {
  const here = side === 'board-front' ? 'front' : 'back';
  return (model.circuit?.parts ?? []).flatMap((part) => {
    const court = part.side === here ? packageNamed(part.package)?.court : undefined;
    return court ? [placeOf(toPhoto, part, court)] : [];
  });
}

interface Placed {
  readonly ref: string;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
}

function placeOf(map: Homography, { ref, x, y, rotation }: Placed, { w, h }: { readonly w: number; readonly h: number }): PartPlace {
  const turn = (rotation * Math.PI) / 180;
  const at = (along: number, across: number): Point =>
    mapped(map, x + along * Math.cos(turn) - across * Math.sin(turn), y + along * Math.sin(turn) + across * Math.cos(turn));
  const [left, right, below, above] = [at(-w / 2, 0), at(w / 2, 0), at(0, -h / 2), at(0, h / 2)];
  const [middleX, middleY] = at(0, 0);
  return {
    part: ref,
    x: middleX,
    y: middleY,
    width: Math.hypot(right[0] - left[0], right[1] - left[1]),
    height: Math.hypot(above[0] - below[0], above[1] - below[1]),
    turnDeg: (Math.atan2(right[1] - left[1], right[0] - left[0]) * 180) / Math.PI,
  };
}
