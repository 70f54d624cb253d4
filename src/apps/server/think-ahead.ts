import { setImmediate } from 'node:timers/promises';
import type { AppParts } from './app-parts.ts';

/** Units that are thought about before anybody asks: as many as a day's work touches. */
const MOST = 60;

/**
 * Thinks about the units under work one by one, giving way to every request in between, so that the first page that asks for advice
 * finds it ready. `isOver` ends it early.
 */
export async function thinkAhead({ bench, door }: Pick<AppParts, 'bench' | 'door'>, isOver: () => boolean): Promise<void> {
  const { rows } = await door.items({ status: ['bought', 'on-the-bench', 'proved', 'listed'], kind: 'unit', limit: MOST });
  for (const { id } of rows) {
    await setImmediate();
    await door.quiet();
    if (isOver()) return;
    bench.item(id);
  }
}
