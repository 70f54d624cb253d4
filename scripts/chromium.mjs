import { existsSync } from 'node:fs';
import { run } from './run.mjs';

const PLACES = [process.env.SALVOR_CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Path of the Chromium on this machine, or undefined. */
export const chromiumPath = () => PLACES.find((path) => path && existsSync(path));

/** Path of a Chromium; installs Debian's when run as root without one. Undefined, and one sentence, where that is not possible. */
export async function ensureChromium() {
  const found = chromiumPath();
  if (found) return found;
  if (process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing Chromium for the browser tests …');
    const wait = ['-o', 'DPkg::Lock::Timeout=600'];
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    await run('apt-get', [...wait, 'update', '-qq'], { env, stdio: ['ignore', 'ignore', 'inherit'] });
    await run('apt-get', [...wait, 'install', '-y', '-qq', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'], {
      env,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  }
  if (!chromiumPath())
    console.error(
      'The browser tests need Chromium: install it (on Debian: sudo apt-get install chromium) or set SALVOR_CHROMIUM to its path.',
    );
  return chromiumPath();
}
