import { join } from 'node:path';
import { runnerImport } from 'vite';

/** A process of its own: tries so many texts on one reader and prints one line with what came of it. */
const [name, seed, runs] = process.argv.slice(2);
const load = async (file) =>
  (await runnerImport(join(import.meta.dirname, '../hostile', file), { logLevel: 'error', configFile: false })).module;
const [{ PARSERS }, { fuzz }] = [await load('parsers.ts'), await load('fuzz.ts')];
console.log(
  JSON.stringify(
    fuzz(
      PARSERS.find((parser) => parser.name === name),
      Number(seed),
      Number(runs),
    ),
  ),
);
process.exit();
