import { z } from 'zod';
import { ModelFile } from './schema.ts';

/** What a file must say for itself even when it is based on another model. */
const ALWAYS = ['format', 'id', 'name', 'level'];

/**
 * The JSON Schema (draft 2020-12) of a model file as it is written, for editors: defaults may be left out, and with
 * `based_on` whole sections may.
 */
export function modelJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(ModelFile, { io: 'input' }) as Record<string, unknown> & { required: string[] };
  const sections = schema.required.filter((name) => !ALWAYS.includes(name));
  return { ...schema, required: ALWAYS, anyOf: [{ required: ['based_on'] }, { required: sections }] };
}
