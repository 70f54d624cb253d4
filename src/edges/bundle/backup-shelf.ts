import { accessSync, constants, existsSync, readFileSync, statSync } from 'node:fs';
import { mkdir, readdir, readFile, rm, stat } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, resolve } from 'node:path';
import type { AnyEvent } from '../../bench/events/index.ts';
import type { Backup, BackupPlan, BackupShelf, BackupTrouble, OpenedBackup, PhotoStore } from '../../bench/ports.ts';
import { writeWhole } from '../files/write-whole.ts';
import { backupFiles, sha256 } from './bundle.ts';
import { pack, photoName, readBackup } from './zip-bundle.ts';

/** Time and number of events stand in the name, so that a list need not open anything. */
const NAME = /^salvor-(\d{4})-(\d\d)-(\d\d)T(\d\d)(\d\d)(\d\d)Z-(\d+)\.zip$/;
/** Lies in a folder that was chosen: where it is missing, the disk is not the one that was meant. */
const MARK = 'salvor-backups.txt';
const MARK_TEXT = `Backups of a Salvor bench. Each salvor-….zip is one, and photos/ holds the pictures of all of them: keep both together.
"salvor restore FILE" brings one back into an empty bench.
`;

const DEFAULT_PLAN: BackupPlan = { folder: null, nightly: true };

/** The backups of the bench in `home`; where they go is kept in its file `backup.json`. */
export function openBackupShelf(home: string): BackupShelf {
  return new FolderOfBackups(resolve(home));
}

const trouble = (code: BackupTrouble['code'], where: string, detail: string): BackupTrouble => ({ ok: false, code, where, detail });
const saying = (error: unknown): string => (error instanceof Error ? error.message : String(error));

class FolderOfBackups implements BackupShelf {
  constructor(private readonly home: string) {}

  private get planFile(): string {
    return join(this.home, 'backup.json');
  }

  plan(): BackupPlan {
    if (!existsSync(this.planFile)) return DEFAULT_PLAN;
    const said = JSON.parse(readFileSync(this.planFile, 'utf8')) as Partial<BackupPlan>;
    return { folder: typeof said.folder === 'string' ? said.folder : null, nightly: said.nightly !== false };
  }

  folder(): string {
    return this.plan().folder ?? join(this.home, 'backups');
  }

  async setPlan(plan: BackupPlan): Promise<{ ok: true } | BackupTrouble> {
    const unfit = plan.folder === null ? undefined : this.objection(plan.folder);
    if (unfit) return trouble('backup-folder-unfit', plan.folder!, unfit);
    try {
      if (plan.folder !== null) await writeWhole(join(plan.folder, MARK), MARK_TEXT);
      await writeWhole(this.planFile, `${JSON.stringify(plan, null, 2)}\n`);
      return { ok: true };
    } catch (error) {
      return trouble('backup-folder-unfit', plan.folder ?? this.home, saying(error));
    }
  }

  private objection(folder: string): string | undefined {
    if (!isAbsolute(folder)) return 'it is no whole path';
    if (!existsSync(folder) || !statSync(folder).isDirectory()) return 'there is no such folder';
    if (!relative(this.home, folder).startsWith('..')) return 'it lies inside the folder of the bench';
    try {
      accessSync(folder, constants.W_OK);
      return undefined;
    } catch {
      return 'it may not be written to';
    }
  }

  /** Why the folder cannot be used now. A chosen one must be there with its mark; the one inside the bench is made. */
  private async gone(): Promise<BackupTrouble | undefined> {
    const folder = this.folder();
    if (this.plan().folder === null) {
      await mkdir(folder, { recursive: true }).catch(() => undefined);
      return undefined;
    }
    if (!existsSync(folder)) return trouble('backup-folder-gone', folder, 'there is no such folder');
    return existsSync(join(folder, MARK)) ? undefined : trouble('backup-folder-gone', folder, `it lacks its ${MARK}`);
  }

  async list(): Promise<{ ok: true; backups: readonly Backup[] } | BackupTrouble> {
    const gone = await this.gone();
    if (gone) return gone;
    const names = await readdir(this.folder()).catch(() => []);
    const backups = await Promise.all(names.filter((name) => NAME.test(name)).map((name) => this.entry(name)));
    return { ok: true, backups: backups.sort((a, b) => (a.name < b.name ? 1 : -1)) };
  }

  private async entry(name: string): Promise<Backup> {
    const [, year, month, day, hour, minute, second, events] = NAME.exec(name)!;
    const { size } = await stat(join(this.folder(), name));
    return { name, madeAt: `${year}-${month}-${day}T${hour}:${minute}:${second}Z`, events: Number(events), bytes: size };
  }

  async write(
    events: readonly AnyEvent[],
    photos: PhotoStore,
    { at, version }: { readonly at: Date; readonly version: string },
  ): Promise<{ ok: true; backup: Backup } | BackupTrouble> {
    const gone = await this.gone();
    if (gone) return gone;
    const folder = this.folder();
    try {
      const photoNames = await this.writePhotos(join(folder, 'photos'), photos);
      const name = `salvor-${at.toISOString().slice(0, 19).replaceAll(':', '')}Z-${events.length}.zip`;
      await writeWhole(join(folder, name), await pack(backupFiles(events, photoNames, { made_at: at.toISOString(), salvor: version })));
      return { ok: true, backup: await this.entry(name) };
    } catch (error) {
      return trouble('backup-not-written', folder, saying(error));
    }
  }

  /** Names of all photos, each of which then lies in `dir`; one that was damaged there is written anew. */
  private async writePhotos(dir: string, photos: PhotoStore): Promise<string[]> {
    const names: string[] = [];
    for (const { hash, mediaType } of await photos.list()) {
      const name = photoName(hash, mediaType);
      if (!(await readPhoto(name, dir, name)).ok) await writePhoto(photoPath(dir, name), photos, hash);
      names.push(name);
    }
    return names;
  }

  async open(nameOrPath: string): Promise<OpenedBackup | BackupTrouble> {
    const path = NAME.test(nameOrPath) && !existsSync(nameOrPath) ? join(this.folder(), nameOrPath) : resolve(nameOrPath);
    const bytes = await readFile(path).catch(() => null);
    if (!bytes) return trouble('no-such-backup', nameOrPath, 'the file cannot be read');
    const read = await readBackup(bytes);
    if (!read.ok) return trouble(read.code === 'bundle-newer' ? 'backup-newer' : 'backup-unreadable', nameOrPath, read.detail);
    const { events, photoNames } = read;
    return { ok: true, events, photoNames, photo: (name) => readPhoto(nameOrPath, join(dirname(path), 'photos'), name) };
  }

  async remove(name: string): Promise<void> {
    if (NAME.test(name)) await rm(join(this.folder(), name), { force: true });
  }

  digest(text: string): string {
    return sha256(text);
  }
}

const photoPath = (dir: string, name: string): string => join(dir, name.slice(0, 2), name);

async function writePhoto(path: string, photos: PhotoStore, hash: string): Promise<void> {
  const original = await photos.get(hash, 'original');
  if (!original) throw new Error(`the photo ${hash.slice(0, 12)} cannot be read from the bench`);
  await writeWhole(path, original.bytes);
}

async function readPhoto(backup: string, dir: string, name: string): Promise<{ ok: true; bytes: Uint8Array } | BackupTrouble> {
  const bytes = await readFile(photoPath(dir, name)).catch(() => null);
  if (!bytes) return trouble('backup-unreadable', backup, `the photo ${name} is not beside it`);
  if (sha256(bytes) !== name.slice(0, 64)) return trouble('backup-unreadable', backup, `the photo ${name} is not what its name says`);
  return { ok: true, bytes };
}
