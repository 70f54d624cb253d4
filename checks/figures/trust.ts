import type { Figure, Progress } from './figure.ts';
import { crashFigures } from './trust-crash.ts';
import { deliveryFigures } from './trust-delivery.ts';
import { fuzzFigures } from './trust-fuzz.ts';
import { hostileFigures } from './trust-hostile.ts';
import { loadFigures } from './trust-load.ts';
import { manyFigures } from './trust-many.ts';
import { routeFigures } from './trust-routes.ts';
import { storeFigures } from './trust-store.ts';
import { noPostgres } from '../store/postgres-server.ts';

/** The figures of trust: nothing lost, nobody in who should not be. */
export async function measure(progress: Progress): Promise<Figure[]> {
  return [
    ...(await routeFigures(progress)),
    ...(await deliveryFigures(progress)),
    ...(await hostileFigures(progress)),
    ...(await fuzzFigures(progress)),
    ...(await crashFigures(progress)),
    ...(await sharedFigures(progress)),
  ];
}

/** Figures of several servers on one database; none, and a sentence, where there is no PostgreSQL. */
async function sharedFigures(progress: Progress): Promise<Figure[]> {
  const reason = noPostgres();
  if (reason !== null) {
    progress(`The figures of several servers are left out: ${reason}.`);
    return [];
  }
  return [...(await storeFigures(progress)), ...(await loadFigures(progress)), ...(await manyFigures(progress))];
}
