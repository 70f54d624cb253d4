import type { Figure, Progress } from './figure.ts';
import { levelFigures } from './models-levels.ts';
import { mistakeFigure } from './models-mistakes.ts';

/** The figures of models that grow: what each level of knowledge loses, and how often a wrong netlist is caught. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [...(await levelFigures(progress)), await mistakeFigure(progress)];
}
