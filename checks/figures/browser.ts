import { chromium, type Browser } from 'playwright-core';
import { chromiumPath } from '../../scripts/chromium.mjs';

/** A headless Chromium of this machine, with nothing of its own going out to the network. Throws one sentence where there is none. */
export async function openBrowser(more: readonly string[] = []): Promise<Browser> {
  const executablePath = chromiumPath();
  if (!executablePath) throw new Error('Install Chromium (on Debian: apt-get install chromium) or set SALVOR_CHROMIUM to its path.');
  const quiet = [
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ];
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return chromium.launch({ executablePath, headless: true, args: [...quiet, ...asRoot, ...more] });
}
