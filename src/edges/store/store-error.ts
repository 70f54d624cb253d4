/**
 * Why the store cannot be used. `message` is a clause that names the file; the fields say what the code needs to be put into words.
 */
export class StoreError extends Error {
  readonly code: StoreErrorCode;
  readonly file: string;
  /** Schema of the file and the newest schema known here, where the code is `store-too-new`. */
  readonly schema: { readonly found: number; readonly known: number } | null;

  constructor(code: StoreErrorCode, file: string, message: string, more: { cause?: unknown; schema?: StoreError['schema'] } = {}) {
    super(message, { cause: more.cause });
    this.name = 'StoreError';
    this.code = code;
    this.file = file;
    this.schema = more.schema ?? null;
  }
}

export type StoreErrorCode =
  | 'store-too-new'
  | 'store-not-a-database'
  | 'store-of-another-program'
  | 'store-corrupt'
  | 'store-read-only'
  | 'store-cannot-open'
  | 'store-busy'
  | 'store-full'
  | 'database-away'
  | 'database-refused'
  | 'store-failed';

/** By the result codes of SQLite (https://www.sqlite.org/rescode.html); a longer code is found by its beginning. */
const BY_RESULT: readonly (readonly [result: string, code: StoreErrorCode, clause: string])[] = [
  ['SQLITE_NOTADB', 'store-not-a-database', 'is not a database'],
  ['SQLITE_CORRUPT', 'store-corrupt', 'is damaged'],
  ['SQLITE_READONLY', 'store-read-only', 'may not be written'],
  ['SQLITE_CANTOPEN', 'store-cannot-open', 'cannot be opened or made there'],
  ['SQLITE_PERM', 'store-cannot-open', 'may not be opened'],
  ['SQLITE_BUSY', 'store-busy', 'is held by another program'],
  ['SQLITE_FULL', 'store-full', 'cannot grow because the disk is full'],
];

/** Runs `work`; what SQLite or the disk says of the file becomes a `StoreError`, everything else passes through. */
export function guarded<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw asStoreError(file, error);
  }
}

function asStoreError(file: string, error: unknown): unknown {
  const result = error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
  if (error instanceof StoreError || !result.startsWith('SQLITE_')) return error;
  const [, code, clause] = BY_RESULT.find(([start]) => result.startsWith(start)) ?? ['', 'store-failed', 'cannot be used'];
  return new StoreError(code as StoreErrorCode, file, `${file} ${clause} (${(error as Error).message})`, { cause: error });
}
