import { cpus, totalmem } from 'node:os';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './run.mjs';
import { ensureInstalled } from './install.mjs';

const USAGE = `Usage: npm run bench [-- --json] [-- --write]
       npm run study:<name> [-- --json] [-- --write]
       npm run --silent bench -- --json   (npm itself then prints nothing either)
  --json   one line a figure and nothing else on standard output
  --write  also put the table into docs/figures.md`;

/**
 * Measures one study and prints it. A study is `checks/figures/<study>.ts` with an exported
 * `measure(progress): Promise<Figure[]>`; vite loads it, so that it may be written in TypeScript.
 */
export async function measureStudy(study) {
  const flags = process.argv.slice(2).filter((arg) => arg.startsWith('--'));
  if (flags.some((flag) => !['--json', '--write'].includes(flag))) return usage();
  const toError = console.log;
  console.log = console.error;
  await ensureInstalled({ quietly: true });
  const { build } = await import('./build.mjs');
  await build({ quietly: true });
  console.log = toError;
  const { runnerImport } = await import('vite');
  const load = async (file) => (await runnerImport(join(ROOT, 'checks/figures', file), { logLevel: 'error', configFile: false })).module;
  const { measure } = await load(`${study}.ts`);
  const { textTable, markdownTable, withBlock } = await load('table.ts');
  const figures = await measure((sentence) => console.error(sentence));
  if (flags.includes('--json')) for (const f of figures) console.log(JSON.stringify(f));
  else console.log(textTable(figures));
  if (flags.includes('--write')) writePage(study, withBlock, markdownTable(figures, machine(), new Date().toISOString().slice(0, 10)));
}

function usage() {
  console.error(USAGE);
  process.exitCode = 2;
}

const machine = () =>
  `${cpus().length} cores (${cpus()[0].model.trim()}), ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}`;

function writePage(study, withBlock, block) {
  const path = join(ROOT, 'docs/figures.md');
  const page = existsSync(path) ? readFileSync(path, 'utf8') : '# Figures\n\nEach table is written by the command that measures it.\n';
  writeFileSync(path, withBlock(page, study, block));
}
