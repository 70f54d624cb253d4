import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, run } from './run.mjs';

const STAMP = join(ROOT, 'node_modules', '.salvor-installed');

const wanted = () =>
  createHash('sha256')
    .update(readFileSync(join(ROOT, 'package-lock.json')))
    .update(process.version)
    .digest('hex');

const isInstalled = () => existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted();

/** Installs the locked packages when the lock file or the version of Node changed since the last time; `quietly` keeps standard output clean. */
export async function ensureInstalled({ quietly = false } = {}) {
  if (isInstalled()) return;
  console.log('Installing the packages that Salvor needs. The database compiles here, which takes about two minutes the first time …');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  // Under `npm test --silent` npm would not even say why it failed.
  const env = { ...process.env, npm_config_build_from_source: 'true', npm_config_loglevel: 'error' };
  const code = await run(npm, ['ci', '--no-audit', '--no-fund'], {
    env,
    shell: process.platform === 'win32',
    stdio: quietly ? ['ignore', 2, 2] : 'inherit',
  });
  if (code !== 0) {
    console.error(
      'The installation stopped. Its last lines above say why: usually no network, or no C++ compiler (python3, make and g++ are needed).',
    );
    process.exit(1);
  }
  writeFileSync(STAMP, wanted());
}
