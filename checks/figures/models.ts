import type { Figure, Progress } from './figure.ts';
import { clickFigures } from './models-clicks.ts';
import { levelFigures } from './models-levels.ts';
import { mistakeFigure } from './models-mistakes.ts';
import { measureOutlines } from './models-outlines.ts';

/** The figures of models that grow: what each level of knowledge loses, how often a wrong netlist is caught, and what marking a board costs. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [
    ...(await levelFigures(progress)),
    await mistakeFigure(progress),
    ...(await measureOutlines(progress)),
    ...(await clickFigures(progress)),
  ];
}
