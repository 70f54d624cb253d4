export interface Curve {
  readonly name: string;
  readonly unit: string;
  /** Seconds and values, rising in time. */
  readonly points: readonly (readonly [number, number])[];
}

export const FRAME = { width: 640, height: 260, left: 48, right: 48, top: 22, bottom: 24 } as const;

/** More points than this are no finer on any screen. */
const MOST_POINTS = 600;

/** The lowest and the highest of each stretch of a curve, so that no peak is lost. */
export function thinned(points: Curve['points']): Curve['points'] {
  if (points.length <= MOST_POINTS) return points;
  const size = Math.ceil((2 * points.length) / MOST_POINTS);
  return Array.from({ length: Math.ceil(points.length / size) }, (_, i) => {
    const part = points.slice(i * size, (i + 1) * size);
    const [low, high] = [part.reduce((a, b) => (b[1] < a[1] ? b : a)), part.reduce((a, b) => (b[1] > a[1] ? b : a))];
    return low[0] <= high[0] ? [low, high] : [high, low];
  }).flat();
}

/** Round numbers from below the least to above the greatest, about four steps. */
export function ticks(values: readonly number[], steps = 4): number[] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const rough = (most - least || Math.abs(most) || 1) / steps;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((each) => each * power).find((each) => each >= rough * 0.999)!;
  const first = Math.floor(least / step);
  const last = Math.max(first + 1, Math.ceil(most / step));
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(8)));
}

/** "40 s", "25 min", "1.5 h" by the length of the whole. */
export function timeWords(seconds: number, whole: number): string {
  if (whole < 600) return `${Math.round(seconds)} s`;
  return whole < 10_800 ? `${Math.round(seconds / 60)} min` : `${Number((seconds / 3600).toFixed(1))} h`;
}
