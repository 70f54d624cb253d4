import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface SmallDisk {
  readonly dir: string;
  /** Gives it another size, in mebibytes. */
  resize(mib: number): void;
  /** Lets it be written, or only read. */
  setReadOnly(isReadOnly: boolean): void;
  remove(): void;
}

const mount = (...args: string[]): boolean => spawnSync('mount', args, { stdio: 'ignore' }).status === 0;

/** A file system of so many mebibytes in a folder of its own; null where this machine lets us mount none. */
export function smallDisk(mib: number): SmallDisk | null {
  const dir = mkdtempSync(join(tmpdir(), 'salvor-disk-'));
  if (!mount('-t', 'tmpfs', '-o', `size=${mib}m`, 'tmpfs', dir)) {
    rmSync(dir, { recursive: true, force: true });
    return null;
  }
  const remount = (option: string): void => {
    if (!mount('-o', `remount,${option}`, dir)) throw new Error(`the disk cannot be remounted with ${option}`);
  };
  return {
    dir,
    resize: (size) => remount(`size=${size}m`),
    setReadOnly: (isReadOnly) => remount(isReadOnly ? 'ro' : 'rw'),
    remove: () => {
      spawnSync('umount', [dir], { stdio: 'ignore' });
      rmSync(dir, { recursive: true, force: true });
    },
  };
}
