import { createHash } from 'node:crypto';
import { readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Model } from '../../bench/models/index.ts';
import type { LoadedModels } from './load-models.ts';

/** The code whose change makes kept models stale. */
const CODE = ['../../bench/models', '../../core/circuit/netlist', '.'].map((folder) => join(import.meta.dirname, folder));

/**
 * As `loadModels`, over several folders: a model of a later one takes the place of one with the same id. What was read
 * without a fault is kept in `cacheFile` until a byte of the folders or of the reading code changes, so that a start
 * need not parse it again. The file only saves time: it may be lost, and one that cannot be written is done without.
 */
export async function cachedModels(dirs: readonly string[], cacheFile: string): Promise<LoadedModels> {
  const key = await digestOf([...dirs, ...CODE]);
  const kept = await readKept(cacheFile, key);
  if (kept) return { models: new Map(kept), problems: [] };
  const { loadModels } = await import('./load-models.ts');
  const loaded = [];
  for (const dir of dirs) loaded.push(await loadModels(dir));
  const models = new Map(loaded.flatMap((each) => [...each.models]));
  const problems = loaded.flatMap((each) => each.problems);
  if (problems.length === 0) await keep(cacheFile, key, [...models]);
  return { models, problems };
}

type Entries = readonly (readonly [string, Model])[];

async function readKept(file: string, key: string): Promise<Entries | null> {
  try {
    const kept = JSON.parse(await readFile(file, 'utf8')) as { key: string; models: Entries };
    return kept.key === key ? kept.models : null;
  } catch {
    return null;
  }
}

/** Written beside and put in its place, so that a reader never sees half of it. */
async function keep(file: string, key: string, models: Entries): Promise<void> {
  const fresh = `${file}.${process.pid}`;
  await writeFile(fresh, JSON.stringify({ key, models }))
    .then(() => rename(fresh, file))
    .catch(() => undefined);
}

/** SHA-256 over the names and contents of all files below the folders; pictures count by their names. */
async function digestOf(dirs: readonly string[]): Promise<string> {
  const hash = createHash('sha256');
  for (const dir of dirs) {
    const names = await readdir(dir, { recursive: true, withFileTypes: true }).catch(() => []);
    const files = names.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
    for (const file of files.sort()) hash.update(`${file}\0`).update(/\.(ya?ml|csv|cir|[jt]s)$/.test(file) ? await readFile(file) : '');
  }
  return hash.digest('hex');
}
