import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MAIN = join(import.meta.dirname, '../../dist/apps/server/main.js');

/** A running server of the built checkout on its own folder. */
export interface ServerProcess {
  readonly url: string;
  readonly home: string;
  readonly child: ChildProcess;
  /** From the start of the process to its word that it is ready, in seconds. */
  readonly readyS: number;
  /** The end of what it has said so far, on both of its outputs. */
  said(): string;
  /** Asks it to end, and waits. */
  stop(): Promise<void>;
}

/** A new empty folder for a bench, and what removes it. */
export function temporaryHome(): { home: string; remove: () => void } {
  const home = mkdtempSync(join(tmpdir(), 'salvor-'));
  return { home, remove: () => rmSync(home, { recursive: true, force: true }) };
}

/** Starts the built server on a port that the machine chooses; rejects when it ends before it is ready. */
export async function startServer(home: string, args: readonly string[] = []): Promise<ServerProcess> {
  const started = performance.now();
  const child = spawn(process.execPath, [MAIN, '--home', home, '--port', '0', ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  const hear = (chunk: Buffer): void => void (said = (said + chunk.toString()).slice(-4000));
  child.stdout.on('data', hear);
  child.stderr.on('data', hear);
  const url = await readyUrl(child);
  const readyS = (performance.now() - started) / 1000;
  const stop = async (): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    child.kill('SIGTERM');
    await once(child, 'exit');
  };
  return { url, home, child, readyS, said: () => said, stop };
}

function readyUrl(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const match = /ready at (http:\/\/127\.0\.0\.1:\d+)/.exec(said);
      if (match) resolve(match[1]!);
    };
    child.stdout!.on('data', hear);
    child.stderr!.on('data', hear);
    child.on('exit', (code) => reject(new Error(`the server ended (${code}) before it was ready:\n${said}`)));
  });
}
