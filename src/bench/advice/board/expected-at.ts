import { METER_SCALES } from '../../../core/diagnosis/index.ts';
import { asMeasured } from '../../../core/diagnosis/board/index.ts';
import { reading } from '../say.ts';
import type { OnBoard } from './believe-on.ts';

/** What a good board shows at a point by its circuit, centred on the good boards that were measured; null where the circuit does not tell. */
export interface Expected {
  /** Null is OL. */
  readonly value: number | null;
  /** Standard deviation over drawn boards with the meter's own, in the unit of the value. */
  readonly spread: number;
  readonly text: string;
}

/** `row` is that of the dictionary: 0 for a good board, 1 + i for a board with fault i. */
export function expectedAt({ known, sense }: OnBoard, point: string, row = 0): Expected | null {
  const { kernels } = known.knowledge.baseline;
  const { points, draws, values } = kernels.dictionary;
  const p = points.findIndex(({ id }) => id === point);
  if (p < 0) return null;
  const { mode } = points[p]!;
  const found = Array.from({ length: draws }, (_, d) => values[(row * draws + d) * points.length + p]!);
  if (found.some(Number.isNaN)) return null;
  const numbers = found.filter((value) => value !== Infinity).map((value) => asMeasured(sense, p, value));
  if (numbers.length * 2 <= draws) return { value: null, spread: 0, text: 'OL by its circuit' };
  const value = numbers.reduce((sum, each) => sum + each, 0) / numbers.length;
  const between = Math.sqrt(numbers.reduce((sum, each) => sum + (each - value) ** 2, 0) / numbers.length);
  const floor = METER_SCALES[mode].floor / METER_SCALES[mode].slope(value);
  const spread = Math.hypot(between, kernels.limit(mode, value) / Math.sqrt(3), floor);
  return { value, spread, text: `${reading(value, mode)} ± ${Number(spread.toPrecision(2))} by its circuit` };
}
