import type { Component } from '../image/components.ts';

/**
 * The convex polygon around a group of pixels, anticlockwise as seen, corner by corner (A. Andrew, Information Processing Letters 9 (1979), monotone chain).
 */
export function outlineOf({ pixels }: Component, width: number): [number, number][] {
  const rows = new Map<number, [number, number]>();
  for (const i of pixels) {
    const x = i % width;
    const y = (i - x) / width;
    const row = rows.get(y);
    if (row) rows.set(y, [Math.min(row[0], x), Math.max(row[1], x + 1)]);
    else rows.set(y, [x, x + 1]);
  }
  const corners = [...rows].flatMap(([y, [from, to]]): [number, number][] => [
    [from, y],
    [to, y],
    [from, y + 1],
    [to, y + 1],
  ]);
  corners.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const lower = chain(corners);
  const upper = chain(corners.toReversed());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(points: readonly [number, number][]): [number, number][] {
  const out: [number, number][] = [];
  for (const p of points) {
    while (out.length > 1 && turn(out.at(-2)!, out.at(-1)!, p) <= 0) out.pop();
    out.push(p);
  }
  return out;
}

const turn = (a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
