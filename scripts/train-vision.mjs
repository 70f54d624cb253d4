import { join } from 'node:path';
import { runnerImport } from 'vite';
import { ROOT } from './run.mjs';

const { train } = (await runnerImport(join(ROOT, 'checks/figures/vision-train.ts'), { logLevel: 'error', configFile: false })).module;
await train((sentence) => console.error(sentence));
process.exit();
