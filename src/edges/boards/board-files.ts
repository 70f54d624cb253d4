import { createHash, randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { BoardRows } from '../../bench/boards/index.ts';

/** Finished dictionaries that are kept; of more, those not used for longest go. A dictionary is some 12 MB. */
const MOST = 24;
const ENDING = '.boards';
/** Bytes before the numbers: their SHA-256, how many are readings, how many are functions, as 32-bit counts. */
const HEAD = 40;

/** Finished dictionaries in a folder, by hash. They can be computed anew, so what cannot be read is not there, and what cannot be written is left. */
export class BoardFiles {
  constructor(private readonly dir: string) {}

  async read(hash: string, readings: number, works: number): Promise<Pick<BoardRows, 'readings' | 'works'> | null> {
    const bytes = await readFile(this.path(hash)).catch(() => null);
    if (!bytes) return null;
    const body = bytes.subarray(HEAD);
    const isWhole =
      bytes.length === HEAD + 4 * (readings + works) &&
      bytes.readUInt32LE(32) === readings &&
      bytes.readUInt32LE(36) === works &&
      createHash('sha256').update(body).digest().equals(bytes.subarray(0, 32));
    if (!isWhole) {
      await rm(this.path(hash), { force: true }).catch(() => undefined);
      return null;
    }
    await utimes(this.path(hash), new Date(), new Date()).catch(() => undefined);
    const numbers = new Float32Array(readings + works);
    new Uint8Array(numbers.buffer).set(body);
    return { readings: numbers.subarray(0, readings), works: numbers.subarray(readings) };
  }

  async write(hash: string, { readings, works }: Pick<BoardRows, 'readings' | 'works'>): Promise<void> {
    const body = Buffer.concat([bytesOf(readings), bytesOf(works)]);
    const head = Buffer.alloc(HEAD);
    createHash('sha256').update(body).digest().copy(head);
    head.writeUInt32LE(readings.length, 32);
    head.writeUInt32LE(works.length, 36);
    const aside = `${this.path(hash)}.${process.pid}-${randomBytes(4).toString('hex')}.part`;
    try {
      await mkdir(this.dir, { recursive: true });
      await writeFile(aside, Buffer.concat([head, body]));
      await rename(aside, this.path(hash));
      await this.prune();
    } catch {
      await rm(aside, { force: true }).catch(() => undefined);
    }
  }

  private path(hash: string): string {
    return join(this.dir, `${hash}${ENDING}`);
  }

  private async prune(): Promise<void> {
    const names = (await readdir(this.dir)).filter((name) => name.endsWith(ENDING) || name.endsWith('.part'));
    const dated = await Promise.all(names.map(async (name) => ({ name, ms: (await stat(join(this.dir, name))).mtimeMs })));
    const old = dated.sort((a, b) => b.ms - a.ms).slice(MOST);
    await Promise.all(old.map(({ name }) => rm(join(this.dir, name), { force: true })));
  }
}

const bytesOf = (numbers: Float32Array): Buffer => Buffer.from(numbers.buffer, numbers.byteOffset, numbers.byteLength);
