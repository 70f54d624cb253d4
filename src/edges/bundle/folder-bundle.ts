import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { AnyEvent } from '../../bench/events/index.ts';
import { bundleContents, bundleFiles, isBundleFile, refuse, sha256, type BundleResult } from './bundle.ts';

/** What an unpacked bundle in a folder holds; its other files are left alone. */
export async function readFolder(dir: string): Promise<BundleResult> {
  try {
    const names = (await readdir(dir, { recursive: true })).map((name) => name.replaceAll('\\', '/')).filter(isBundleFile);
    const files = await Promise.all(names.sort().map(async (name) => [name, new Uint8Array(await readFile(join(dir, name)))] as const));
    return bundleContents(new Map(files));
  } catch (error) {
    return refuse('bundle-incomplete', `its folder cannot be read (${(error as Error).message})`);
  }
}

/** Writes a bundle unpacked into a folder: events, manifest, and photos (JPEG) by their hash. */
export async function writeFolder(dir: string, events: readonly AnyEvent[], photos: readonly Uint8Array[]): Promise<void> {
  const named = photos.map((bytes) => ({ name: `${sha256(bytes)}.jpg`, bytes }));
  for (const [name, bytes] of bundleFiles(events, named)) {
    await mkdir(dirname(join(dir, name)), { recursive: true });
    await writeFile(join(dir, name), bytes);
  }
}
