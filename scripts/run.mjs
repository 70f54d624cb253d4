import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { dirname, join } from 'node:path';

/** The checkout that these scripts belong to. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

/** Runs a command in the checkout and shows its output; resolves to its exit code. */
export function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: ROOT, stdio: 'inherit', ...options });
    child.on('error', reject);
    child.on('close', (code, signal) => resolve(code ?? (signal ? 1 : 0)));
  });
}

/** Runs a JavaScript program of an installed package, such as `vitest/vitest.mjs`. */
export const runBin = (path, args, options) => run(process.execPath, [join(ROOT, 'node_modules', path), ...args], options);
