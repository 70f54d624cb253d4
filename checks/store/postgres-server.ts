import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';

/** The unprivileged user of every Linux; PostgreSQL refuses to run as the administrator. */
const NOBODY = 65_534;
const DEBIAN = '/usr/lib/postgresql';

/** Folder of the programs of PostgreSQL on this machine, the newest; null where there are none. */
export function postgresPrograms(): string | null {
  const debian = existsSync(DEBIAN) ? readdirSync(DEBIAN).sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [...debian.map((version) => join(DEBIAN, version, 'bin')), ...(process.env['PATH'] ?? '').split(':')];
  return folders.find((folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres'))) ?? null;
}

/** Why the checks on PostgreSQL do not run here; null where they do. A judge that must not leave them out sets SALVOR_MUST_HAVE_POSTGRES. */
export function noPostgres(): string | null {
  if (postgresPrograms()) return null;
  const sentence = 'no PostgreSQL on this machine (on Debian: sudo apt-get install postgresql)';
  if (process.env['SALVOR_MUST_HAVE_POSTGRES']) throw new Error(`The checks on PostgreSQL must run, but there is ${sentence}.`);
  return sentence;
}

/** A PostgreSQL of its own, thrown away at the end, reached over loopback only. */
export interface PostgresServer {
  /** Makes an empty database and gives its address. */
  newDatabase(): Promise<string>;
  /** Ends it at once, as a power cut would, and starts it again. */
  crash(): Promise<void>;
  stop(): Promise<void>;
}

/** Makes a cluster in a temporary folder and starts it on a free port. `settings` are lines of its configuration. */
export async function startPostgres(settings: readonly string[] = []): Promise<PostgresServer> {
  const bin = postgresPrograms()!;
  const dir = mkdtempSync(join(tmpdir(), 'salvor-postgres-'));
  const asUser = process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {};
  if (asUser.uid !== undefined) chownSync(dir, NOBODY, NOBODY);
  chmodSync(dir, 0o700);
  const data = join(dir, 'data');
  const init = ['-D', data, '-U', 'salvor', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-instructions', '--no-sync'];
  const made = spawnSync(join(bin, 'initdb'), init, { ...asUser, cwd: dir, encoding: 'utf8' });
  if (made.status !== 0) throw new Error(`initdb failed: ${made.stderr}`);
  const port = await freePort();
  const options = ['-D', data, '-p', String(port), '-h', '127.0.0.1', '-k', '', ...settings.flatMap((line) => ['-c', line])];
  const start = async (): Promise<ChildProcess> => {
    const child = spawn(join(bin, 'postgres'), options, { ...asUser, cwd: dir, stdio: ['ignore', 'ignore', 'pipe'] });
    await answering(child, addressOf(port, 'postgres'));
    return child;
  };
  let child = await start();
  let databases = 0;
  return {
    async newDatabase() {
      const name = `bench_${++databases}`;
      await ask(addressOf(port, 'postgres'), `CREATE DATABASE ${name}`);
      return addressOf(port, name);
    },
    async crash() {
      await end(child, 'SIGQUIT');
      child = await start();
    },
    async stop() {
      await end(child, 'SIGINT');
      rmSync(dir, { recursive: true, force: true });
    },
  };
}

const addressOf = (port: number, name: string): string => `postgres://salvor@127.0.0.1:${port}/${name}`;

async function end(child: ChildProcess, signal: 'SIGINT' | 'SIGQUIT'): Promise<void> {
  const exited = once(child, 'exit');
  child.kill(signal);
  await exited;
}

/** Sends one statement over a connection of its own. */
export async function ask(url: string, statement: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(statement)).rows;
  } finally {
    await client.end();
  }
}

async function answering(child: ChildProcess, url: string): Promise<void> {
  let said = '';
  child.stderr!.on('data', (chunk: Buffer) => (said = `${said}${chunk.toString()}`.slice(-4000)));
  for (let tries = 0; tries < 600; tries++) {
    if (child.exitCode !== null) throw new Error(`PostgreSQL ended (${child.exitCode}): ${said}`);
    const isUp = await ask(url, 'SELECT 1').then(
      () => true,
      () => false,
    );
    if (isUp) return;
    await wait(50);
  }
  throw new Error(`PostgreSQL did not answer within half a minute: ${said}`);
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
}
