import pg from 'pg';
import { StoreError, type StoreErrorCode } from '../store-error.ts';

/** By the classes and codes of PostgreSQL (its manual, appendix A); the first whose beginning fits. */
const BY_STATE: readonly (readonly [state: string, code: StoreErrorCode, clause: string])[] = [
  ['53100', 'store-full', 'cannot grow because its disk is full'],
  ['57P', 'database-away', 'is being stopped or started'],
  ['25P03', 'database-away', 'ended a transaction that waited too long'],
  ['53', 'database-away', 'has no room for another connection or query'],
  ['08', 'database-away', 'cannot be reached'],
  ['28', 'database-refused', 'does not let this user in'],
  ['3D', 'database-refused', 'is not there'],
  ['42501', 'database-refused', 'does not give this user the rights that are needed'],
  ['25006', 'store-read-only', 'may only be read'],
];

/** What Node and the driver say of a connection that is not there, or no more. */
const AWAY = /ECONN|ENOTFOUND|EAI_AGAIN|ETIMEDOUT|EPIPE|EHOSTUNREACH|Connection terminated|timeout exceeded|not queryable/;

/** Runs `work`; what PostgreSQL or the way to it says becomes a `StoreError` about `place`, everything else passes through. */
export async function guardedBy<T>(place: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw asStoreError(place, error);
  }
}

function asStoreError(place: string, error: unknown): unknown {
  if (!(error instanceof Error) || error instanceof StoreError) return error;
  const state = error instanceof pg.DatabaseError ? (error.code ?? '') : null;
  if (state === null) {
    const said = `${'code' in error ? String(error.code) : ''} ${error.message}`;
    if (!AWAY.test(said)) return error;
    return new StoreError('database-away', place, `${place} cannot be reached (${said.trim()})`, { cause: error });
  }
  const [, code, clause] = BY_STATE.find(([start]) => state.startsWith(start)) ?? ['', 'store-failed' as const, 'cannot be used'];
  return new StoreError(code, place, `${place} ${clause} (${error.message})`, { cause: error });
}
