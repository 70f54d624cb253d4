import { readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { writeWhole } from '../files/write-whole.ts';
import type { PhotoShelf } from './photo-shelf.ts';

/** Written aside under the id of the process that writes it. */
const ASIDE = /(?:\.(\d+)-[0-9a-f]+)?\.part$/;

/** The files of a folder of photos, two letters of the hash a subfolder. A file is there whole or not at all. */
export class PhotoFiles implements PhotoShelf {
  constructor(private readonly dir: string) {}

  private path(hash: string, ending: string): string {
    return join(this.dir, hash.slice(0, 2), `${hash}.${ending}`);
  }

  write(hash: string, ending: string, bytes: Uint8Array | string): Promise<void> {
    return writeWhole(this.path(hash, ending), bytes);
  }

  /** Null when there is no such file. */
  async read(hash: string, ending: string): Promise<Uint8Array | null> {
    try {
      return await readFile(this.path(hash, ending));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
      throw error;
    }
  }

  /** Hashes of the files with this ending, in order. */
  async hashes(ending: string): Promise<string[]> {
    const names = await this.names();
    return names.filter((name) => name.endsWith(`.${ending}`)).map((name) => name.slice(3, -ending.length - 1));
  }

  /** Removes what an interrupted write left behind; what a living process is writing stays. */
  async sweep(): Promise<void> {
    const leftovers = (await this.names()).filter(isLeftover);
    await Promise.all(leftovers.map((name) => rm(join(this.dir, name), { force: true })));
  }

  async close(): Promise<void> {}

  private async names(): Promise<string[]> {
    const names = await readdir(this.dir, { recursive: true }).catch(() => []);
    return names.map((name) => name.replaceAll('\\', '/')).sort();
  }
}

function isLeftover(name: string): boolean {
  const match = ASIDE.exec(name);
  return match !== null && !isAlive(Number(match[1] ?? 0));
}

function isAlive(pid: number): boolean {
  if (pid === 0) return false;
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
