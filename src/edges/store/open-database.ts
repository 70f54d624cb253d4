import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { MIGRATIONS } from './migrations/index.ts';
import { StoreError, guarded } from './store-error.ts';

/** Marks a file as a store of Salvor, in the header field that SQLite keeps for this ("SLVR" in ASCII). */
export const APPLICATION_ID = 0x534c5652;

/** How long one process waits for another that is writing. */
const BUSY_MS = 10_000;

/**
 * The database of a file, made in its folder if it is not there, and brought to the newest schema. What is committed is on the disk
 * before the commit returns: write-ahead log, synchronous FULL. Throws `StoreError` when the file cannot serve.
 */
export function openDatabase(file: string): Database.Database {
  needFolder(file);
  const database = guarded(file, () => new Database(file, { timeout: BUSY_MS }));
  try {
    return guarded(file, () => prepared(database, file));
  } catch (error) {
    database.close();
    throw error;
  }
}

function needFolder(file: string): void {
  const folder = dirname(file);
  if (!existsSync(folder)) throw new StoreError('store-cannot-open', file, `${file} cannot be opened because there is no folder ${folder}`);
}

function prepared(database: Database.Database, file: string): Database.Database {
  database.pragma('foreign_keys = ON');
  database.pragma('synchronous = FULL');
  refuseStrangers(database, file);
  if (schemaVersion(database) < MIGRATIONS.length) {
    database.pragma('journal_mode = WAL');
    database.transaction(() => migrate(database, file)).immediate();
  }
  return database;
}

export const schemaVersion = (database: Database.Database): number => database.pragma('user_version', { simple: true }) as number;

function refuseStrangers(database: Database.Database, file: string): void {
  const application = database.pragma('application_id', { simple: true }) as number;
  const isBlank = database.prepare('SELECT count(*) FROM sqlite_master').pluck().get() === 0;
  if (application !== APPLICATION_ID && !isBlank)
    throw new StoreError('store-of-another-program', file, `${file} is a database of another program`);
  const schema = { found: schemaVersion(database), known: MIGRATIONS.length };
  if (schema.found > schema.known) {
    const clause = `${file} was written by a newer Salvor (its schema is ${schema.found}; this one knows up to ${schema.known})`;
    throw new StoreError('store-too-new', file, clause, { schema });
  }
}

/** Brings the schema up to date. Runs inside a transaction; what another process did before it is not done again. */
function migrate(database: Database.Database, file: string): void {
  refuseStrangers(database, file);
  for (const step of MIGRATIONS.slice(schemaVersion(database))) database.exec(step);
  database.pragma(`application_id = ${APPLICATION_ID}`);
  database.pragma(`user_version = ${MIGRATIONS.length}`);
}
