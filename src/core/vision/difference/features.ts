import type { Component } from '../image/components.ts';
import { valueAt } from '../image/resample.ts';
import type { Plane } from '../image/plane.ts';
import { cellOf } from './candidates.ts';
import type { DifferenceMaps } from './difference-maps.ts';

/** What the ranker looks at, in this order; names for the notes of its training. */
export const FEATURES = [
  'log_area',
  'long_side_px',
  'short_side_px',
  'fill',
  'log_sum_beyond_1',
  'log_sum_beyond_2',
  'log_sum_beyond_3',
  'max_beyond_1',
  'max_beyond_2',
  'max_beyond_3',
  'mean_raw',
  'darker_share',
  'colour_max',
  'colour_mean',
  'cell_max',
  'cell_mean',
  'edges_reference',
  'edges_other',
  'misfit_around',
  'beyond_around',
  'fit_as_it_lies',
  'fit_shifted',
  'left_after_shift',
  'thickness_px',
  'share_of_beyond_1',
  'grey_inside',
  'went_mean',
  'came_mean',
  'signed_mean',
  'grey_other_inside',
  'edges_inside_reference',
  'edges_inside_other',
  'yellow_shift',
  'red_shift',
] as const;

const log = (value: number): number => Math.log2(1 + value);

/** The row of numbers by which a candidate is judged (order of `FEATURES`). `unit` is the grey difference that counts as one. */
export function featuresOf(maps: DifferenceMaps, candidate: Component, unit: number): Float32Array {
  const inside = insideOf(maps, candidate, unit);
  const around = aroundOf(maps, candidate, unit);
  const shift = bestShift(maps, candidate);
  const width = candidate.right - candidate.left + 1;
  const height = candidate.bottom - candidate.top + 1;
  const area = candidate.pixels.length;
  const [one, two, three] = inside.sums;
  return Float32Array.of(
    log(area),
    Math.max(width, height),
    Math.min(width, height),
    area / (width * height),
    log(one),
    log(two),
    log(three),
    ...inside.most,
    inside.raw / area,
    inside.darker / area,
    inside.colourMax,
    inside.colour / area,
    inside.cellMax,
    inside.cell / area,
    around.edgesReference,
    around.edgesOther,
    around.misfit,
    around.beyond,
    shift.fitAsItLies,
    shift.fitShifted,
    shift.left / unit,
    thicknessOf(candidate, maps.width),
    one / (area + 1),
    inside.grey / area / 255,
    inside.went / area,
    inside.came / area,
    inside.signed / area,
    inside.other / area / 255,
    inside.edgesReference / area,
    inside.edgesOther / area,
    inside.yellow / area,
    inside.red / area,
  );
}

function insideOf(maps: DifferenceMaps, { pixels }: Component, unit: number) {
  const all = {
    sums: [0, 0, 0] as [number, number, number],
    most: [0, 0, 0] as [number, number, number],
    raw: 0,
    signed: 0,
    darker: 0,
    colour: 0,
    colourMax: 0,
    cell: 0,
    cellMax: 0,
    went: 0,
    came: 0,
    grey: 0,
    other: 0,
    edgesReference: 0,
    edgesOther: 0,
    yellow: 0,
    red: 0,
  };
  for (const i of pixels) {
    for (let r = 0; r < 3; r++) {
      const value = Math.abs(maps.beyond[r]!.data[i]!) / unit;
      all.sums[r]! += value;
      if (value > all.most[r]!) all.most[r] = value;
    }
    const raw = maps.raw.data[i]!;
    all.raw += Math.abs(raw) / unit;
    all.signed += raw / unit;
    if (raw < 0) all.darker++;
    const colour = maps.colour.data[i]!;
    all.colour += colour;
    if (colour > all.colourMax) all.colourMax = colour;
    const cell = cellOf(maps, i);
    const most = Math.max(maps.went.data[cell]!, maps.came.data[cell]!);
    all.went += maps.went.data[cell]!;
    all.came += maps.came.data[cell]!;
    all.cell += most;
    if (most > all.cellMax) all.cellMax = most;
    all.grey += maps.reference.data[i]!;
    all.other += maps.other.data[i]!;
    all.edgesReference += edgeAt(maps.reference, i) / unit;
    all.edgesOther += edgeAt(maps.other, i) / unit;
    all.yellow += maps.yellowBlue.data[i]!;
    all.red += maps.redGreen.data[i]!;
  }
  return all;
}

/** Width of the frame around a candidate in which the general misfit is measured. */
const AROUND_PX = 16;

function aroundOf(maps: DifferenceMaps, candidate: Component, unit: number) {
  const inside = new Set(candidate.pixels);
  const sum = { edgesReference: 0, edgesOther: 0, misfit: 0, beyond: 0 };
  let count = 1;
  const { width, height } = maps;
  for (let y = Math.max(1, candidate.top - AROUND_PX); y <= Math.min(height - 2, candidate.bottom + AROUND_PX); y++) {
    for (let x = Math.max(1, candidate.left - AROUND_PX); x <= Math.min(width - 2, candidate.right + AROUND_PX); x++) {
      const i = y * width + x;
      if (inside.has(i) || !maps.valid[i]) continue;
      count++;
      sum.edgesReference += edgeAt(maps.reference, i) / unit;
      sum.edgesOther += edgeAt(maps.other, i) / unit;
      sum.misfit += Math.abs(maps.raw.data[i]!) / unit;
      sum.beyond += Math.abs(maps.beyond[0].data[i]!) / unit;
    }
  }
  return {
    edgesReference: sum.edgesReference / count,
    edgesOther: sum.edgesOther / count,
    misfit: sum.misfit / count,
    beyond: sum.beyond / count,
  };
}

function edgeAt({ width, data }: Plane, i: number): number {
  const before = i > width ? i - width : i;
  const after = i < data.length - width - 1 ? i + width : i;
  return Math.abs(data[i + 1 < data.length ? i + 1 : i]! - data[i > 0 ? i - 1 : i]!) + Math.abs(data[after]! - data[before]!);
}

const MARGIN_PX = 4;
const SEARCH_PX = 4;

/** How well the patch fits as it lies and after the best small shift (correlation), and the mean grey difference that the shift leaves. */
function bestShift(maps: DifferenceMaps, candidate: Component) {
  const asItLies = fitAt(maps, candidate, 0, 0);
  let best = asItLies;
  for (let dy = -SEARCH_PX; dy <= SEARCH_PX; dy += 2) {
    for (let dx = -SEARCH_PX; dx <= SEARCH_PX; dx += 2) {
      const at = fitAt(maps, candidate, dx, dy);
      if (at.correlation > best.correlation) best = at;
    }
  }
  return { fitAsItLies: asItLies.correlation, fitShifted: best.correlation, left: best.left };
}

function fitAt({ reference, other, width, height }: DifferenceMaps, box: Component, dx: number, dy: number) {
  const stride = Math.max(1, Math.floor(Math.sqrt(((box.right - box.left + 9) * (box.bottom - box.top + 9)) / 600)));
  let [n, a, b, aa, bb, ab, left] = [0, 0, 0, 0, 0, 0, 0];
  for (let y = Math.max(0, box.top - MARGIN_PX); y <= Math.min(height - 1, box.bottom + MARGIN_PX); y += stride) {
    for (let x = Math.max(0, box.left - MARGIN_PX); x <= Math.min(width - 1, box.right + MARGIN_PX); x += stride) {
      const r = reference.data[y * width + x]!;
      const o = valueAt(other, x + dx, y + dy);
      n++;
      a += r;
      b += o;
      aa += r * r;
      bb += o * o;
      ab += r * o;
      left += Math.abs(r - o);
    }
  }
  const spread = Math.sqrt((aa - (a * a) / n + n) * (bb - (b * b) / n + n));
  return { correlation: (ab - (a * b) / n) / spread, left: left / n };
}

/** Twice the greatest distance from a pixel of the group to its edge: how thick the group is at its thickest. */
function thicknessOf({ pixels }: Component, width: number): number {
  let left: readonly number[] = pixels;
  let thickness = 0;
  while (left.length > 0 && thickness < 40) {
    const inside = new Set(left);
    left = left.filter((i) => inside.has(i - 1) && inside.has(i + 1) && inside.has(i - width) && inside.has(i + width));
    thickness += left.length > 0 ? 2 : 1;
  }
  return thickness;
}
