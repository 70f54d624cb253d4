import { beliefFigures } from './diagnosis-belief.ts';
import type { Figure, Progress } from './figure.ts';

/** The figures of diagnosis from simulated readings: of what is believed and advised. */
export const measure = (progress: Progress): Promise<Figure[]> => beliefFigures(progress);
