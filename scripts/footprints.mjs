import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, run } from './run.mjs';

const OWN = join(ROOT, '.cache/kicad-footprints');
const PLACES = ['/usr/share/kicad/footprints', join(OWN, 'usr/share/kicad/footprints')];

/** Without a list of packages yet, the list first; with no network, not for long. */
const APT = 'apt-get -o Acquire::http::Timeout=15 -o Acquire::Retries=0';
const FETCH =
  `${APT} download kicad-footprints || { ${APT} update -qq && ${APT} download kicad-footprints; } ; ` +
  'dpkg-deb -x kicad-footprints_*.deb . && rm kicad-footprints_*.deb';

/** Folder of the land patterns of Debian's kicad-footprints, or undefined. */
export const footprintsPath = () => PLACES.find((path) => existsSync(path));

/** The folder; fetches Debian's package into the cache, without installing it, where there is none. Undefined, and one sentence, where that is not possible. */
export async function ensureFootprints() {
  if (!footprintsPath() && process.platform === 'linux' && existsSync('/usr/bin/apt-get') && existsSync('/usr/bin/dpkg-deb')) {
    console.log('Fetching land patterns for the checks of fit …');
    mkdirSync(OWN, { recursive: true });
    await run('sh', ['-c', FETCH], { cwd: OWN, stdio: ['ignore', 'ignore', 'ignore'] });
  }
  if (!footprintsPath())
    console.error('The pairs of the checks of fit need land patterns: install them (on Debian: sudo apt-get install kicad-footprints).');
  return footprintsPath();
}
