import type { Figure, Progress } from './figure.ts';
import { fitFigures } from './fit.ts';
import { ceilingFigures } from './plan-ceiling.ts';
import { coldFigures } from './plan-cold.ts';
import { qualityFigures } from './plan-quality.ts';
import { warmFigures } from './plan-warm.ts';

/** The figures of planning: how good the plan is, how long it takes, and whether ceiling prices hold. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [
    ...(await coldFigures(progress)),
    ...(await warmFigures(progress)),
    ...(await qualityFigures(progress)),
    ...ceilingFigures(progress),
    ...(await fitFigures(progress)),
  ];
}
