#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const main = new URL('../dist/apps/cli/main.js', import.meta.url);

if (existsSync(fileURLToPath(main))) await import(main.href);
else {
  console.error('Salvor is not built yet. Run npm start once, or npm run build, in the folder of the checkout; then try again.');
  process.exitCode = 3;
}
