import { z } from 'zod';
import { ModelFile } from './schema.ts';

/** What a file must say for itself even when it is based on another model. */
const ALWAYS = ['format', 'id', 'name', 'level'];

/**
 * The JSON Schema (draft 2020-12) of a model file as it is written, for editors: defaults may be left out, and with
 * `based_on` whole sections may.
 */
export function modelJsonSchema(): Record<string, unknown> {
  const { $schema, $defs } = z.toJSONSchema(ModelFile, { io: 'input' });
  const file = $defs!['ModelFile']!;
  const sections = file.required!.filter((name) => !ALWAYS.includes(name));
  return { $schema, ...file, required: ALWAYS, anyOf: [{ required: ['based_on'] }, { required: sections }] };
}
