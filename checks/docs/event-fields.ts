import { z } from 'zod';
import { BODIES, KINDS, type Kind } from '../../src/bench/events/index.ts';

interface Shape {
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly items?: Shape;
  readonly enum?: readonly string[];
  readonly $ref?: string;
}

/** Longer lists of words have a list of their own on the page. */
const SHORT_LIST = 6;

/**
 * The fields of every kind of event as the page of formats shows them: `name` for what must be there, `name`? for what
 * may be left out, with the words that it takes in brackets, and the fields of each thing of a list behind a colon.
 */
export const eventFields = (): ReadonlyMap<Kind, string> =>
  new Map(KINDS.map((kind) => [kind, fieldsOf(z.toJSONSchema(BODIES[kind], { io: 'input' }) as Shape)]));

function fieldsOf({ properties = {}, required = [] }: Shape): string {
  const fields = Object.entries(properties).map(([name, shape]) => `\`${name}\`${required.includes(name) ? '' : '?'}${detail(shape)}`);
  return fields.length === 0 ? 'none' : fields.join(', ');
}

function detail({ enum: words, items }: Shape): string {
  if (words && words.length <= SHORT_LIST) return ` (${words.join(', ')})`;
  return items?.properties ? ` (each: ${fieldsOf(items)})` : '';
}
