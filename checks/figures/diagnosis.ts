import { beliefFigures } from './diagnosis-belief.ts';
import { circuitFigures } from './diagnosis-circuit.ts';
import type { Figure, Progress } from './figure.ts';

/** The figures of diagnosis: of its circuit, and of what is believed and advised from it. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [...(await circuitFigures(progress)), ...(await beliefFigures(progress))];
}
