/** One measured figure, as `--json` prints it: exactly these five fields. */
export interface Figure {
  /** The id that the issue or the docs name, such as `path.ready_s`. */
  readonly figure: string;
  readonly value: number;
  readonly unit: string;
  /** `≤ 1`, `≥ 0.9`, `= 0`, or `shown` where there is no limit. */
  readonly target: string;
  /** What it was measured against, in the same run where that is possible. */
  readonly reference: string;
}

/** Tells a person what is being measured; never on standard output. */
export type Progress = (sentence: string) => void;

/** Whether a figure meets its target; undefined where the target is only to be shown. */
export function meets({ value, target }: Pick<Figure, 'value' | 'target'>): boolean | undefined {
  const match = /^([≤≥=])\s*(-?[\d.]+)$/.exec(target);
  if (!match) return undefined;
  const limit = Number(match[2]);
  if (match[1] === '≤') return value <= limit;
  return match[1] === '≥' ? value >= limit : value === limit;
}

/** The p-quantile (0..1) of a sample by the nearest rank; the sample must not be empty. */
export function quantile(sample: readonly number[], p: number): number {
  const sorted = [...sample].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(p * sorted.length) - 1))]!;
}

export const round = (value: number, digits = 3): number => Number(value.toPrecision(digits));
