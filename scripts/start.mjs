import { join } from 'node:path';
import { spawn } from 'node:child_process';
import { ROOT } from './run.mjs';
import { ensureInstalled } from './install.mjs';

/** `npm start [-- --empty] [-- --port N] [-- --home DIR]`: installs and builds what changed, then opens the bench. */
await ensureInstalled();
const { build } = await import('./build.mjs');
await build();

const server = spawn(process.execPath, [join(ROOT, 'dist/apps/server/main.js'), '--open', ...process.argv.slice(2)], { stdio: 'inherit' });
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
server.on('close', (code) => process.exit(code ?? 0));
