import { orderFigures } from './hands-orders.ts';
import { matFigures } from './hands-mat.ts';
import { toneFigures } from './hands-tones.ts';
import { logFigures } from './hands-logs.ts';
import type { Figure, Progress } from './figure.ts';

/** The figures of the hands' work: the order of opening, the mat on paper, logs of heat and charge, and the measuring of a tone. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [...(await matFigures(progress)), ...logFigures(progress), ...orderFigures(progress), ...toneFigures(progress)];
}
