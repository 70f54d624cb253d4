import { isBackupDue, makeBackup } from '../../bench/backup/index.ts';
import { problemOfBackup } from '../../bench/words.ts';
import type { AppParts } from './app-parts.ts';

const LOOK_EVERY_MS = 10 * 60_000;
/** Late enough that the day's work is done, on the clock on the wall. */
const NIGHT_HOUR = 3;

/** The last time that it was three in the morning here. */
export function lastNight(now: Date): Date {
  const night = new Date(now);
  night.setHours(NIGHT_HOUR, 0, 0, 0);
  if (night > now) night.setDate(night.getDate() - 1);
  return night;
}

type NightlyParts = Pick<AppParts, 'bench' | 'photos' | 'backups' | 'clock' | 'version' | 'log'>;

/** Makes the backup of the last night if it is due, as after three in the morning or at the first start since; what goes wrong is logged. */
export async function backUpIfDue({ backups: shelf, log, ...parts }: NightlyParts): Promise<void> {
  const listed = await shelf.list();
  if (!listed.ok) return shelf.plan().nightly ? log(problemOfBackup(listed).message, listed.code) : undefined;
  const now = parts.clock.now();
  const due = isBackupDue(shelf.plan(), listed.backups[0], { events: parts.bench.state().seq, now, lastNight: lastNight(now) });
  if (!due) return;
  const made = await makeBackup({ ...parts, shelf });
  if (!made.ok) log(problemOfBackup(made).message, made.code);
}

/** Looks every ten minutes whether the nightly backup is due; `stop` waits for one that is being made. */
export function backUpNightly(parts: NightlyParts): { stop(): Promise<void> } {
  let underway = Promise.resolve();
  const look = (): void => {
    underway = underway.then(() => backUpIfDue(parts)).catch((error: unknown) => parts.log('The nightly backup could not be made.', error));
  };
  const timer = setInterval(look, LOOK_EVERY_MS);
  return {
    stop: () => {
      clearInterval(timer);
      return underway;
    },
  };
}
