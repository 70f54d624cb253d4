import type { Backup, BackupPlan } from '../ports.ts';

/**
 * Whether the nightly backup is to be made: the newest one is older than the last night, and the bench has grown since. `lastNight` is when the
 * last night was; a newest backup that lies after `now`, as when the clock was set back, counts as old.
 */
export function isBackupDue(
  { nightly }: BackupPlan,
  newest: Pick<Backup, 'madeAt' | 'events'> | undefined,
  bench: { readonly events: number; readonly now: Date; readonly lastNight: Date },
): boolean {
  if (!nightly || bench.events === 0) return false;
  if (!newest) return true;
  const madeAt = new Date(newest.madeAt);
  const isOld = madeAt < bench.lastNight || madeAt > bench.now;
  return isOld && newest.events !== bench.events;
}
