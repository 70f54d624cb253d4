import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { bundleContents, isBundleFile, refuse, type BundleResult } from './bundle.ts';

/** What an unpacked bundle in a folder holds; the manifest may be missing, and its other files are left alone. */
export async function readFolder(dir: string): Promise<BundleResult> {
  try {
    const names = (await readdir(dir, { recursive: true })).map((name) => name.replaceAll('\\', '/')).filter(isBundleFile);
    const files = await Promise.all(names.sort().map(async (name) => [name, new Uint8Array(await readFile(join(dir, name)))] as const));
    return bundleContents(new Map(files), false);
  } catch (error) {
    return refuse('bundle-incomplete', `its folder cannot be read (${(error as Error).message})`);
  }
}
