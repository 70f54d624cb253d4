import { join } from 'node:path';
import { ROOT, run } from './run.mjs';
import { ensureInstalled } from './install.mjs';

/** `npm run demo [-- --seed WORD]`: installs and builds what changed, then walks the whole path in the terminal, on a bench that is gone afterwards. */
await ensureInstalled();
const { build } = await import('./build.mjs');
await build();
process.exitCode = await run(process.execPath, [join(ROOT, 'dist/apps/cli/demo-walk/main.js'), ...process.argv.slice(2)]);
