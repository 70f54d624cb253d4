import type { Bench } from '../bench.ts';
import type { Stored } from '../events/index.ts';
import { foldLog } from '../fold/index.ts';
import type { BackupShelf, BackupTrouble } from '../ports.ts';
import { stateText } from '../state-text.ts';

export interface Tried {
  readonly ok: true;
  readonly name: string;
  readonly events: number;
  readonly photos: number;
  /** SHA-256 of the state that its log folds to. */
  readonly digest: string;
}

export type BackupDiffers = Omit<BackupTrouble, 'code'> & { readonly code: 'backup-differs' };

/**
 * The restore drill: opens a backup as a restore would, checks every photo against its hash and folds its log, with the models of `bench`, into
 * a state of its own. With `expected`, the digest of that state must be this one.
 */
export async function tryBackup(
  shelf: BackupShelf,
  bench: Pick<Bench, 'models' | 'model'>,
  name: string,
  expected?: string,
): Promise<Tried | BackupTrouble | BackupDiffers> {
  const opened = await shelf.open(name);
  if (!opened.ok) return opened;
  for (const photoName of opened.photoNames) {
    const photo = await opened.photo(photoName);
    if (!photo.ok) return photo;
  }
  const log = opened.events.map((event, index): Stored => ({ seq: index + 1, event }));
  const models = new Map(bench.models().map(({ id }) => [id, bench.model(id)!]));
  const digest = shelf.digest(stateText(foldLog(log, models)));
  if (expected !== undefined && digest !== expected)
    return {
      ok: false,
      code: 'backup-differs',
      where: name,
      detail: `its state has the hash ${digest.slice(0, 12)}, the bench ${expected.slice(0, 12)}`,
    };
  return { ok: true, name, events: log.length, photos: opened.photoNames.length, digest };
}
