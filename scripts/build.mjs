import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { ROOT, runBin } from './run.mjs';
import { billOfMaterials, licencesText } from './sbom.mjs';

const DIST = join(ROOT, 'dist');
const STAMP = join(DIST, '.built');
const INPUTS = ['src', 'tsconfig.json', 'tsconfig.base.json', 'package-lock.json', 'scripts/build.mjs', 'scripts/sbom.mjs'];
const PROJECTS = ['src/apps/server', 'src/apps/cli'];

function filesBelow(path) {
  const entries = readdirSync(path, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry) => (entry.isDirectory() ? filesBelow(join(path, entry.name)) : [join(path, entry.name)]));
}

function sourceHash() {
  const hash = createHash('sha256');
  for (const input of INPUTS) {
    const path = join(ROOT, input);
    const files = existsSync(path) && readdirSafe(path) ? filesBelow(path) : [path];
    for (const file of files) if (!/\.test\.tsx?$/.test(file)) hash.update(relative(ROOT, file)).update(readFileSync(file));
  }
  return hash.digest('hex');
}

function readdirSafe(path) {
  try {
    return readdirSync(path).length > 0;
  } catch {
    return false;
  }
}

/** Worker files are plain JavaScript beside the code that starts them; the build only has to carry them over. */
function copyWorkers() {
  for (const file of filesBelow(join(ROOT, 'src')).filter((path) => path.endsWith('.mjs'))) {
    const target = join(DIST, relative(join(ROOT, 'src'), file));
    mkdirSync(join(target, '..'), { recursive: true });
    cpSync(file, target);
  }
}

/** Compiles the programs and bundles the web app when a source changed since the last build; `quietly` keeps standard output clean. Exits on errors. */
export async function build({ quietly = false } = {}) {
  const stdio = quietly ? ['ignore', 2, 2] : 'inherit';
  const hash = sourceHash();
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === hash) return;
  rmSync(STAMP, { force: true });
  console.log('Building: server and command line …');
  if ((await runBin('typescript/bin/tsc', ['-b', ...PROJECTS], { stdio })) !== 0)
    stop('The build stopped: the compiler found the mistakes above.');
  copyWorkers();
  console.log('Building: web app …');
  if ((await runBin('vite/bin/vite.js', ['build', 'src/apps/web', '--logLevel', 'warn'], { stdio })) !== 0)
    stop('The build of the web app stopped at the mistakes above.');
  writeFileSync(join(DIST, 'sbom.cdx.json'), `${JSON.stringify(billOfMaterials(), null, 2)}\n`);
  writeFileSync(join(DIST, 'licences.txt'), licencesText());
  writeFileSync(STAMP, hash);
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}

if (process.argv[1] === import.meta.filename) await build();
