import type { BackupShelf, BackupTrouble, PhotoStore } from '../ports.ts';
import { takeBundle, type BundleTaker, type Taken } from '../take-bundle.ts';

/** Brings a backup back into an empty bench; photos first, one at a time, then the log as a whole. Says how much came in. */
export async function restoreBackup(
  bench: BundleTaker,
  photos: PhotoStore,
  shelf: BackupShelf,
  nameOrPath: string,
): Promise<Taken | BackupTrouble> {
  const { events } = bench.overview();
  if (events > 0) return { ok: false, code: 'not-empty', events };
  const opened = await shelf.open(nameOrPath);
  if (!opened.ok) return opened;
  for (const name of opened.photoNames) {
    const photo = await opened.photo(name);
    if (!photo.ok) return photo;
    const kept = await photos.put(name, photo.bytes);
    if (!kept.ok) return kept;
  }
  const taken = await takeBundle(bench, photos, { events: opened.events, photos: [] });
  return taken.ok ? { ...taken, photos: opened.photoNames.length } : taken;
}
