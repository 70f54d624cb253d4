import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, run } from './run.mjs';
import { ensureInstalled } from './install.mjs';

/** `npm run demo [-- --seed WORD]`: walks the whole path in the terminal, on a bench that is gone afterwards. */
const WALK = join(ROOT, 'dist/apps/cli/demo-walk/main.js');
if (!existsSync(WALK)) {
  await ensureInstalled();
  const { build } = await import('./build.mjs');
  await build();
}
process.exitCode = await run(process.execPath, [WALK, ...process.argv.slice(2)]);
