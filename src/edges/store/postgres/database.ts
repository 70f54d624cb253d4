import { Kysely, PostgresDialect, sql, type Transaction } from 'kysely';
import pg from 'pg';
import { StoreError } from '../store-error.ts';
import { MIGRATIONS } from './migrations.ts';
import { guardedBy } from './postgres-error.ts';
import type { PostgresTables } from './tables.ts';

export type Database = Kysely<PostgresTables>;
export type Within = Transaction<PostgresTables>;

/** Names the lock of everything that changes the log or the schema ("SLVR" in ASCII, as the mark of the embedded store). */
const LOG_LOCK = 0x534c5652;
/** Reads beside the one write that a process has under way, and the ear for other processes. */
const CONNECTIONS = 6;
/** Type of eight-byte integers in the catalogue of PostgreSQL (pg_type.dat, "int8"). */
const INT8 = 20;

/** Eight-byte integers as numbers: places in the log stay far below 2⁵³. */
const types: pg.CustomTypesConfig = {
  getTypeParser: ((oid: number, format?: 'text') => (oid === INT8 ? Number : pg.types.getTypeParser(oid, format))) as never,
};

/** How a connection is made; committed means on the disk of the database, whatever its own settings say. */
export const connectionTo = (url: string): pg.ClientConfig => ({
  connectionString: url,
  types,
  connectionTimeoutMillis: 10_000,
  keepAlive: true,
  options: '-c synchronous_commit=on -c idle_in_transaction_session_timeout=60000',
});

/** The database without the password, for sentences. */
export function placeOf(url: string): string {
  try {
    const { host, pathname } = new URL(url);
    return `the database ${pathname.slice(1) || 'postgres'} on ${host || 'this machine'}`;
  } catch {
    throw new StoreError('database-refused', 'the database', 'the address of the database is not of the form postgres://user@host/name');
  }
}

/** Opens a database and brings it to the newest schema. Rejects with `StoreError` where it cannot serve. */
export async function openDatabase(url: string, place: string): Promise<Database> {
  const pool = new pg.Pool({ ...connectionTo(url), max: CONNECTIONS });
  // A connection that breaks while nobody uses it is replaced by the next one that is asked for.
  pool.on('error', () => undefined);
  // One that breaks in the middle of its work fails that work; what it says besides must not end the process.
  pool.on('connect', (client) => void client.on('error', () => undefined));
  const database: Database = new Kysely({ dialect: new PostgresDialect({ pool }) });
  try {
    await guardedBy(place, () => database.transaction().execute((within) => migrate(within, place)));
    return database;
  } catch (error) {
    await database.destroy();
    throw error;
  }
}

/** Holds off all other processes until the transaction ends, however it ends. */
export const alone = (within: Within): Promise<unknown> => sql`SELECT pg_advisory_xact_lock(${sql.lit(LOG_LOCK)})`.execute(within);

async function migrate(within: Within, place: string): Promise<void> {
  await alone(within);
  await sql`CREATE TABLE IF NOT EXISTS schema_version (version integer NOT NULL)`.execute(within);
  const found = (await within.selectFrom('schema_version').select('version').executeTakeFirst())?.version ?? 0;
  if (found > MIGRATIONS.length) {
    const schema = { found, known: MIGRATIONS.length };
    const clause = `${place} was written by a newer Salvor (its schema is ${found}; this one knows up to ${schema.known})`;
    throw new StoreError('store-too-new', place, clause, { schema });
  }
  if (found === MIGRATIONS.length) return;
  for (const step of MIGRATIONS.slice(found)) await sql.raw(step).execute(within);
  await within.deleteFrom('schema_version').execute();
  await within.insertInto('schema_version').values({ version: MIGRATIONS.length }).execute();
}
