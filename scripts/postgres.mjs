import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { run } from './run.mjs';

const DEBIAN = '/usr/lib/postgresql';
const SETTINGS = '/etc/postgresql-common';

const isThere = () => {
  const debian = existsSync(DEBIAN) ? readdirSync(DEBIAN).map((version) => join(DEBIAN, version, 'bin')) : [];
  return [...debian, ...(process.env.PATH ?? '').split(':')].some((folder) => existsSync(join(folder, 'initdb')));
};

/**
 * Whether PostgreSQL is on this machine; installs Debian's when run as root without one and it must be there. Its own service is kept from
 * starting: the checks make a cluster of their own in a temporary folder and throw it away.
 */
export async function ensurePostgres({ must }) {
  if (isThere()) return true;
  if (must && process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing PostgreSQL for the checks of several servers …');
    if (!existsSync(SETTINGS)) {
      mkdirSync(SETTINGS);
      writeFileSync(join(SETTINGS, 'createcluster.conf'), 'create_main_cluster = false\n');
    }
    const wait = ['-o', 'DPkg::Lock::Timeout=600'];
    const quiet = { env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }, stdio: ['ignore', 'ignore', 'inherit'] };
    await run('apt-get', [...wait, 'update', '-qq'], quiet);
    await run('apt-get', [...wait, 'install', '-y', '-qq', '--no-install-recommends', 'postgresql'], quiet);
  }
  if (!isThere())
    console.error(
      'The checks of several servers on one database are left out: install PostgreSQL (on Debian: sudo apt-get install postgresql).',
    );
  return isThere();
}
