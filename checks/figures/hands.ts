import { displayFigures } from './hands-display.ts';
import { orderFigures } from './hands-orders.ts';
import { matFigures } from './hands-mat.ts';
import { toneFigures } from './hands-tones.ts';
import { logFigures } from './hands-logs.ts';
import type { Figure, Progress } from './figure.ts';

/** The figures of the hands' work: the order of opening, the mat on paper, logs of heat and charge, the measuring of a tone, and displays on photos. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [
    ...(await matFigures(progress)),
    ...logFigures(progress),
    ...orderFigures(progress),
    ...toneFigures(progress),
    ...displayFigures(progress),
  ];
}
