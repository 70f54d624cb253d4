import type { Context } from 'hono';
import { ROLES, type Role } from '../../bench/ports.ts';

/** Who asks: a program or page of this machine, or a device that joined over the network. */
export interface Visitor {
  readonly door: 'here' | 'network';
  readonly role: Role;
  /** Of the device, as it stands in the log; null for this machine, where each browser names itself. */
  readonly name: string | null;
}

declare module 'hono' {
  interface ContextVariableMap {
    visitor: Visitor;
  }
}

export const HERE: Visitor = { door: 'here', role: 'owner', name: null };

export const visitorOf = (c: Context): Visitor => c.get('visitor');

/** What only an owner may ask: everything at once, where copies go, who is let in, and how the server does. */
const OWNERS_ONLY = /^\/api\/(?:bundle|backups|devices|upkeep)(?:\/|$)/;
/** Questions that are asked by POST because they are long. */
const QUESTIONS: ReadonlySet<string> = new Set([
  '/api/scout',
  '/api/scout/lot',
  '/api/scout/questions',
  '/api/scout/compare',
  '/api/plan/choice',
  '/api/comparisons/judge',
]);

/** The least role that may ask for this. */
export function roleNeeded(method: string, path: string): Role {
  if (OWNERS_ONLY.test(path)) return 'owner';
  return method === 'GET' || method === 'HEAD' || QUESTIONS.has(path) ? 'view' : 'bench';
}

/** Whether a role may do what `needed` may. */
export const mayAct = (role: Role, needed: Role): boolean => ROLES.indexOf(role) <= ROLES.indexOf(needed);
