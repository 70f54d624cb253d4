import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

export interface ServerArguments {
  readonly home: string;
  readonly port: number;
  readonly empty: boolean;
  readonly open: boolean;
  readonly help: boolean;
}

export const USAGE = `Usage: npm start -- [--home DIR] [--port N] [--empty] [--open]
  --home DIR  folder of the bench; else SALVOR_HOME, else ./bench-data
  --port N    4780 unless told; 0 takes any free one
  --empty     start without the demo bench
  --open      open the browser`;

/** What the command line of the server asks for; an answer with `message` when it cannot be understood. */
export function serverArguments(
  argv: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): { readonly ok: true; readonly args: ServerArguments } | { readonly ok: false; readonly message: string } {
  try {
    const { values } = parseArgs({
      args: [...argv],
      options: {
        home: { type: 'string' },
        port: { type: 'string', default: '4780' },
        empty: { type: 'boolean', default: false },
        open: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    });
    const port = /^\d{1,5}$/.test(values.port) ? Number(values.port) : Number.NaN;
    if (!(port <= 65_535)) return { ok: false, message: `--port takes a number from 0 to 65535, not "${values.port}".\n${USAGE}` };
    const home = resolve(values.home ?? (env.SALVOR_HOME || 'bench-data'));
    return { ok: true, args: { ...values, home, port } };
  } catch (error) {
    return { ok: false, message: `${error instanceof Error ? error.message : String(error)}\n${USAGE}` };
  }
}
