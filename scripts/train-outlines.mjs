import { join } from 'node:path';
import { runnerImport } from 'vite';
import { drawOutlineBoard } from './outline-boards.mjs';
import { ROOT } from './run.mjs';

const load = async (file) => (await runnerImport(join(ROOT, file), { logLevel: 'error', configFile: false })).module;
const { randomStream } = await load('src/core/numeric/index.ts');
const { train } = await load('checks/figures/outline-train.ts');
await train(
  (seed) => drawOutlineBoard(seed, randomStream),
  (sentence) => console.error(sentence),
);
process.exit();
