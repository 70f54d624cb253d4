import type { Figure, Progress } from './figure.ts';
import { crashFigures } from './trust-crash.ts';
import { deliveryFigures } from './trust-delivery.ts';
import { fuzzFigures } from './trust-fuzz.ts';
import { hostileFigures } from './trust-hostile.ts';
import { routeFigures } from './trust-routes.ts';

/** The figures of trust: nothing lost, nobody in who should not be. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [
    ...(await routeFigures(progress)),
    ...(await deliveryFigures(progress)),
    ...(await hostileFigures(progress)),
    ...(await fuzzFigures(progress)),
    ...(await crashFigures(progress)),
  ];
}
