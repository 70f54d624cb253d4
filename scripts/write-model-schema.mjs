import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { runnerImport } from 'vite';
import { ROOT } from './run.mjs';

/** Writes models/model.schema.json, the published shape of a model file, from the schema that the program itself uses. */
const PATH = join(ROOT, 'models/model.schema.json');
const { module } = await runnerImport(join(ROOT, 'src/bench/models/json-schema.ts'), { logLevel: 'error', configFile: false });
const text = await format(JSON.stringify(module.modelJsonSchema()), { ...(await resolveConfig(PATH)), parser: 'json' });
writeFileSync(PATH, text);
console.log(`Wrote ${PATH}`);
