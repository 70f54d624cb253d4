/** Why a store cannot be opened or written. The apps turn the code into a sentence; `detail` is what the disk said. */
export class StoreError extends Error {
  constructor(
    readonly code:
      'store-newer' | 'store-not-a-database' | 'store-read-only' | 'store-corrupt' | 'store-full' | 'store-busy' | 'store-unusable',
    readonly file: string,
    readonly detail: string,
  ) {
    super(`${code}: ${file}: ${detail}`);
    this.name = 'StoreError';
  }
}

const CODES: readonly (readonly [RegExp, StoreError['code']])[] = [
  [/SQLITE_NOTADB/, 'store-not-a-database'],
  [/SQLITE_CORRUPT/, 'store-corrupt'],
  [/SQLITE_(READONLY|CANTOPEN|PERM)/, 'store-read-only'],
  [/SQLITE_FULL/, 'store-full'],
  [/SQLITE_(BUSY|LOCKED)/, 'store-busy'],
];

/** Runs `work`; what the database throws comes out as a StoreError, anything else as it is. */
export function asStoreError<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (!code.startsWith('SQLITE_')) throw error;
    const known = CODES.find(([pattern]) => pattern.test(code));
    throw new StoreError(known?.[1] ?? 'store-unusable', file, (error as Error).message);
  }
}
