import { randomBytes } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';

/**
 * A file that is there whole or not at all: written aside (under the id of this process, ending in `.part`), synchronised, then renamed. A power
 * cut leaves a leftover at worst, never half a file. Folders on the way are made. Throws what the disk says, with nothing left aside.
 */
export async function writeWhole(path: string, bytes: Uint8Array | string, mode = 0o666): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const aside = `${path}.${process.pid}-${randomBytes(4).toString('hex')}.part`;
  try {
    await writeSynchronised(aside, bytes, mode);
    await rename(aside, path);
  } catch (error) {
    await rm(aside, { force: true }).catch(() => undefined);
    throw error;
  }
  await syncFolder(folder);
}

async function writeSynchronised(path: string, bytes: Uint8Array | string, mode: number): Promise<void> {
  const file = await open(path, 'wx', mode);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** The rename itself must be on disk too; some systems cannot synchronise a folder, and need not. */
async function syncFolder(dir: string): Promise<void> {
  const folder = await open(dir, 'r').catch(() => undefined);
  await folder?.sync().catch(() => undefined);
  await folder?.close();
}
