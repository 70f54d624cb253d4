import type { Backup } from '../ports.ts';

/** How many are kept: the newest ones whatever their age, then the newest of each day, week and month. */
export const KEPT = { newest: 3, days: 7, weeks: 5, months: 12 } as const;

const DAY_MS = 86_400_000;

/** Names of the backups that rotation lets go of. The newest always stays; days, weeks (from Monday) and months are those of UTC. */
export function backupsToRemove(backups: readonly Backup[]): string[] {
  const newestFirst = [...backups].sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
  const kept = new Set([
    ...newestFirst.slice(0, KEPT.newest),
    ...newestOfEach(newestFirst, KEPT.days, ({ madeAt }) => madeAt.slice(0, 10)),
    ...newestOfEach(newestFirst, KEPT.weeks, ({ madeAt }) => String(weekOf(madeAt))),
    ...newestOfEach(newestFirst, KEPT.months, ({ madeAt }) => madeAt.slice(0, 7)),
  ]);
  return newestFirst.filter((backup) => !kept.has(backup)).map(({ name }) => name);
}

/** The newest backup of each of the last `count` stretches of time that have one. */
function newestOfEach(newestFirst: readonly Backup[], count: number, stretchOf: (backup: Backup) => string): Backup[] {
  const byStretch = new Map<string, Backup>();
  for (const backup of newestFirst) if (!byStretch.has(stretchOf(backup))) byStretch.set(stretchOf(backup), backup);
  return [...byStretch.values()].slice(0, count);
}

/** Weeks since the Monday before 1970. */
const weekOf = (madeAt: string): number => Math.floor((Date.parse(madeAt) / DAY_MS + 3) / 7);
