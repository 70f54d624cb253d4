import { logAndRows } from './0001-log-and-rows.ts';

/**
 * Every step of the schema, in order; the nth leads to schema n. A step is never changed once it has shipped, and it only adds: stored data
 * only grows. Where the making of words or rows changes, a step sets the `rows_version` in `meta` to 0, and the rows are made anew.
 */
export const MIGRATIONS: readonly string[] = [logAndRows];
