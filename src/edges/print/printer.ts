import type { Printer } from '../../bench/ports.ts';
import { drawLabels } from './draw-labels.ts';
import { drawMat } from './draw-mat.ts';

/** A printer that writes PDF. The library is loaded with the first sheet. */
export const openPrinter = (): Printer => ({ mat: drawMat, labels: drawLabels });
