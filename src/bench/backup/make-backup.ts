import type { BenchViews } from '../bench.ts';
import type { Backup, BackupShelf, BackupTrouble, Clock, PhotoStore } from '../ports.ts';
import { stateText } from '../state-text.ts';
import { wholeLog } from '../whole-log.ts';
import { backupsToRemove } from './backups-to-remove.ts';
import { tryBackup, type BackupDiffers, type Tried } from './try-backup.ts';

export interface BackupParts {
  readonly bench: BenchViews;
  readonly photos: PhotoStore;
  readonly shelf: BackupShelf;
  readonly clock: Clock;
  readonly version: string;
}

export interface Made {
  readonly ok: true;
  readonly backup: Backup;
  readonly tried: Tried;
  /** Names of older backups that rotation let go of. */
  readonly removed: readonly string[];
}

/**
 * Writes a backup, proves that it opens to the same bench, and only then lets go of what rotation no longer keeps. A backup that does not
 * stand the proof is kept for looking at, and nothing older is removed.
 */
export async function makeBackup(parts: BackupParts): Promise<Made | BackupTrouble | BackupDiffers> {
  const { bench, photos, shelf, clock, version } = parts;
  const state = bench.state();
  const digest = shelf.digest(stateText(state));
  const events = wholeLog(bench).slice(0, state.seq);
  const written = await shelf.write(events, photos, { at: clock.now(), version });
  if (!written.ok) return written;
  const tried = await tryBackup(shelf, bench, written.backup.name, digest);
  if (!tried.ok) return tried;
  const listed = await shelf.list();
  const removed = listed.ok ? backupsToRemove(listed.backups) : [];
  for (const name of removed) await shelf.remove(name);
  return { ok: true, backup: written.backup, tried, removed };
}
