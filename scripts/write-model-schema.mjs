import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { build } from './build.mjs';
import { ROOT } from './run.mjs';

/** Writes models/model.schema.json, the published shape of a model file, from the schema that the program itself uses. */
const PATH = join(ROOT, 'models/model.schema.json');
await build({ quietly: true });
const { modelJsonSchema } = await import('../dist/bench/models/index.js');
const text = await format(JSON.stringify(modelJsonSchema()), { ...(await resolveConfig(PATH)), parser: 'json' });
writeFileSync(PATH, text);
console.log(`Wrote ${PATH}`);
