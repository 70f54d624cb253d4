import type { Backup, BackupPlan, BackupShelf, OpenedBackup } from '../ports.ts';

/** A `BackupShelf` in memory, for tests of what stands on it. The digest of a text is the text. */
export function memoryBackups(): BackupShelf & { readonly kept: Map<string, OpenedBackup & { readonly entry: Backup }> } {
  const kept = new Map<string, OpenedBackup & { readonly entry: Backup }>();
  let plan: BackupPlan = { folder: null, nightly: true };
  const list = (): Backup[] => [...kept.values()].map(({ entry }) => entry).sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
  return {
    kept,
    plan: () => plan,
    folder: () => plan.folder ?? '/bench/backups',
    setPlan: async (next) => {
      if (next.folder === '/nowhere')
        return { ok: false, code: 'backup-folder-unfit', where: next.folder, detail: 'there is no such folder' };
      plan = next;
      return { ok: true };
    },
    list: async () => ({ ok: true, backups: list() }),
    write: async (events, photos, { at }) => {
      const madeAt = at.toISOString();
      const entry = { name: `backup-${madeAt}`, madeAt, events: events.length, bytes: 1 };
      const photoNames = (await photos.list()).map(({ hash }) => hash);
      kept.set(entry.name, {
        ok: true,
        entry,
        events,
        photoNames,
        photo: async (name) => ({ ok: true, bytes: new TextEncoder().encode(name) }),
      });
      return { ok: true, backup: entry };
    },
    open: async (name) => kept.get(name) ?? { ok: false, code: 'no-such-backup', where: name, detail: 'the file cannot be read' },
    remove: async (name) => void kept.delete(name),
    digest: (text) => text,
  };
}
