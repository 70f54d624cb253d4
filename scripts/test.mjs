import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, runBin } from './run.mjs';
import { ensureInstalled } from './install.mjs';

/** `npm test`: everything that must hold, in one run. The last line counts what passed and failed over all parts. */
const total = { passed: 0, failed: 0 };

function count(name, passed, failed) {
  total.passed += passed;
  total.failed += failed;
  console.log(`\n== ${name}: ${passed} passed, ${failed} failed ==\n`);
}

async function part(name, path, args) {
  const code = await runBin(path, args);
  count(name, code === 0 ? 1 : 0, code === 0 ? 0 : 1);
}

async function vitestPart(name, projects, env = {}) {
  const report = join(ROOT, '.cache', `tests-${name}.json`);
  rmSync(report, { force: true });
  const select = projects.flatMap((project) => ['--project', project]);
  const args = ['run', ...select, '--reporter=dot', '--reporter=json', `--outputFile.json=${report}`];
  const code = await runBin('vitest/vitest.mjs', args, { env: { ...process.env, ...env } });
  const result = existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : { numPassedTests: 0, numFailedTests: 1 };
  const suitesBroken = (result.testResults ?? []).filter(
    (suite) => suite.status === 'failed' && suite.assertionResults.length === 0,
  ).length;
  const failed = result.numFailedTests + suitesBroken;
  count(name, result.numPassedTests, failed === 0 && code !== 0 ? 1 : failed);
}

await ensureInstalled();
mkdirSync(join(ROOT, '.cache'), { recursive: true });
const { build } = await import('./build.mjs');
const { ensureChromium } = await import('./chromium.mjs');
const { ensureFootprints } = await import('./footprints.mjs');
const { ensurePostgres } = await import('./postgres.mjs');
await build();
await part('types', 'typescript/bin/tsc', ['-b']);
await part('lint', 'oxlint/bin/oxlint', ['--deny-warnings']);
await part('format', 'prettier/bin/prettier.cjs', ['--check', '.', '--log-level', 'warn']);
await vitestPart('unit', ['unit']);
await ensureFootprints();
await ensurePostgres({ must: Boolean(process.env.SALVOR_MUST_HAVE_POSTGRES) });
await vitestPart('checks', ['checks']);
const chromium = await ensureChromium();
if (chromium) await vitestPart('browser', ['browser'], { SALVOR_CHROMIUM: chromium });
else count('browser', 0, 1);

console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
