import { MAD_TO_SIGMA, median } from '../../numeric/index.ts';
import { gaussianBlur } from '../image/blur.ts';
import { components, type Component } from '../image/components.ts';
import type { Plane } from '../image/plane.ts';

/** A dot, or a speck of several, that stays dark or lit. */
export interface Dot {
  readonly x: number;
  readonly y: number;
  /** Size of the place that stands out, shares of the display. */
  readonly w: number;
  readonly h: number;
  /** Dots that it covers; 1 where the dots of the display are not known. */
  readonly count: number;
}

export interface Line {
  readonly across: boolean;
  /** Where it lies: share from the top for one across, from the left for one down. */
  readonly at: number;
}

/** How much darker than its surroundings a place must be, as a share, and how many spreads of the picture. */
const DARKER = 0.16;
const SPREADS = 6;
/** A dead dot is darker by at least this share. */
const DEAD = 0.7;
/** How much lighter on black, in light 0..1. */
const LIGHTER = 0.004;
/** A rim of the display that is left out: its frame and its shadow. */
const RIM = 0.012;
/** A whole line stands out by so much on the median of its dots. */
const LINE_DARKER = 0.06;
const LINE_WIDEST = 0.03;
/** A piece of a line is so long, and so many times as long as wide. */
const PIECE_LONG = 0.2;
const PIECE_THIN = 8;
/** A speck of more than this share of the display is a stain. */
const SPECK_MOST = 0.002;

/** Dots and lines that differ from their surroundings: darker ones on a lit display, brighter ones on black. `inDots`: a value is a dot of the display. */
export function oddPlaces(flat: Plane, sought: 'dark' | 'bright', inDots: boolean): { dots: Dot[]; lines: Line[] } {
  const deviation = deviationOf(flat, sought);
  const limit = Math.max(sought === 'dark' ? DARKER : LIGHTER, SPREADS * spreadOf(deviation.data));
  const { width, height } = flat;
  const mask = Uint8Array.from(deviation.data, (value) => (value > limit ? 1 : 0));
  clearRim(mask, width, height);
  const whole = [...wholeLines(deviation, false, sought), ...wholeLines(deviation, true, sought)];
  clearLines(mask, width, height, whole);
  const groups = components(mask, width);
  const isPiece = (group: Component): boolean => {
    const [w, h] = [group.right - group.left + 1, group.bottom - group.top + 1];
    return (w > PIECE_LONG * width && w > PIECE_THIN * h) || (h > PIECE_LONG * height && h > PIECE_THIN * w);
  };
  const pieces = groups.filter(isPiece).map((group): Line => {
    const across = group.right - group.left > group.bottom - group.top;
    return { across, at: across ? (group.top + group.bottom + 1) / 2 / height : (group.left + group.right + 1) / 2 / width };
  });
  const dots = groups
    .filter((group) => !isPiece(group) && group.pixels.length <= SPECK_MOST * mask.length && group.pixels.length >= (inDots ? 1 : 2))
    .map(({ left, right, top, bottom, pixels }): Dot => ({
      x: (left + right + 1) / 2 / width,
      y: (top + bottom + 1) / 2 / height,
      w: (right - left + 1) / width,
      h: (bottom - top + 1) / height,
      count: inDots ? Math.max(1, Math.round(massOf(pixels, deviation.data))) : 1,
    }));
  return { dots, lines: [...whole.map(({ across, at }) => ({ across, at })), ...pieces] };
}

/** How many whole dots a speck makes: a dot that lies between two places of the grid counts with a part in each. */
function massOf(pixels: readonly number[], deviation: Float32Array): number {
  const most = pixels.reduce((high, i) => Math.max(high, deviation[i]!), 0);
  return pixels.reduce((sum, i) => sum + deviation[i]!, 0) / Math.max(most, DEAD);
}

/** By how much each place is darker than around it, as a share; on black, how much lighter, in light. */
function deviationOf(flat: Plane, sought: 'dark' | 'bright'): Plane {
  const around = gaussianBlur(flat, flat.width / 30);
  const data = Float32Array.from(flat.data, (value, i) =>
    sought === 'dark' ? 1 - value / Math.max(1e-4, around.data[i]!) : value - around.data[i]!,
  );
  return { ...flat, data };
}

/** Standard deviation by the median deviation, from a sample of the pixels. */
function spreadOf(values: Float32Array): number {
  const step = Math.max(1, Math.floor(values.length / 20_000));
  const sample = Array.from({ length: Math.floor(values.length / step) }, (_, i) => values[i * step]!);
  const middle = median(sample);
  return MAD_TO_SIGMA * median(sample.map((value) => Math.abs(value - middle)));
}

function clearRim(mask: Uint8Array, width: number, height: number): void {
  const [rx, ry] = [Math.ceil(RIM * width), Math.ceil(RIM * height)];
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) if (x < rx || y < ry || x >= width - rx || y >= height - ry) mask[i] = 0;
}

interface Run extends Line {
  readonly from: number;
  readonly to: number;
}

/** Lines over at least half the display: where the median of a row or column stands out from its neighbours. */
function wholeLines({ width, height, data }: Plane, across: boolean, sought: 'dark' | 'bright'): Run[] {
  const [count, long] = across ? [height, width] : [width, height];
  const profile = Array.from({ length: count }, (_, i) =>
    median(Array.from({ length: long }, (__, j) => data[across ? i * width + j : j * width + i]!)),
  );
  const limit = Math.max(sought === 'dark' ? LINE_DARKER : LIGHTER, SPREADS * spreadOf(Float32Array.from(profile)));
  const rim = Math.ceil(RIM * count);
  const runs: Run[] = [];
  for (let from = rim; from < count - rim; from++) {
    if (profile[from]! <= limit) continue;
    let to = from;
    while (to + 1 < count - rim && profile[to + 1]! > limit) to++;
    if (to - from + 1 <= Math.max(3, LINE_WIDEST * count)) runs.push({ across, at: (from + to + 1) / 2 / count, from, to });
    from = to;
  }
  return runs;
}

function clearLines(mask: Uint8Array, width: number, height: number, runs: readonly Run[]): void {
  for (const { across, from, to } of runs)
    for (let k = Math.max(0, from - 1); k <= Math.min((across ? height : width) - 1, to + 1); k++)
      for (let j = 0; j < (across ? width : height); j++) mask[across ? k * width + j : j * width + k] = 0;
}
