import { v7 } from 'uuid';

/** A fresh name for a thing, such as "lot-0198…": sortable by time of making, unique across devices. */
export const newId = (what: string): string => `${what}-${v7()}`;
