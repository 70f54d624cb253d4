import { spawnSync } from 'node:child_process';
import { closeSync, ftruncateSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CircuitError, compileCircuit, operatingPoint, readNetlist } from '../../src/core/circuit/index.ts';
import { readKicadMod } from '../../src/core/fit/index.ts';
import { readYaml } from '../../src/edges/models/read-yaml.ts';
import { hostileNetlists } from './hostile-netlists.ts';
import type { Met } from './server-corpus.ts';

const TOO_LONG_MS = 30_000;
const CLI = join(import.meta.dirname, '../../dist/apps/cli/main.js');

/** A netlist that must be refused is; any other is solved, or said to have no answer, in time. */
function solve(text: string, refused: boolean): string | null {
  const read = readNetlist(text);
  if (!read.ok) return (read.problems[0]?.message.length ?? 0) > 5 ? null : 'was refused without a word';
  if (refused) return 'was taken';
  try {
    operatingPoint(compileCircuit(read.netlist));
    return null;
  } catch (error) {
    return error instanceof CircuitError && error.code === 'singular' ? null : String(error);
  }
}

const laughs = Array.from({ length: 30 }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}, *a${i}, *a${i}, *a${i}]`).join('\n');
const YAML: Readonly<Record<string, string>> = {
  'aliases that double without end': `a0: &a0 x\n${laughs}\n`,
  'an alias of itself': 'a: &a [*a]\n',
  'a tag of a program': 'a: !!js/function "function () {}"\n',
  'brackets without end': `${'['.repeat(200_000)}\n`,
  'levels without end': Array.from({ length: 2000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
  'a key twice': 'a: 1\na: 2\n',
  'a tab for an indent': 'a:\n\tb: 1\n',
  'a quote that is never closed': 'a: "x\n',
};
const PATTERNS: Readonly<Record<string, string>> = {
  'brackets without end': '('.repeat(1_000_000),
  'brackets that end': `${'('.repeat(300_000)}${')'.repeat(300_000)}`,
  'a quote that is never closed': `(footprint "${'x'.repeat(1_000_000)}`,
  'no pattern': '(kicad_pcb (version 1))',
  'sizes of no size': '(footprint "X" (pad "1" smd rect (at 1e400 nan) (size -1 1e999) (layers "F.Cu")))',
};

const refusal = (read: { ok: boolean; message?: string; problems?: readonly { message: string }[] }): string | null => {
  if (read.ok) return 'was taken';
  const said = read.message ?? read.problems?.[0]?.message ?? '';
  return said.length > 5 ? null : 'was refused without a word';
};

function meet(name: string, work: () => string | null): Met {
  const start = performance.now();
  let fault: string | null;
  try {
    fault = work();
  } catch (error) {
    fault = String(error);
  }
  const ms = performance.now() - start;
  return { name, fault: fault ?? (ms > TOO_LONG_MS ? `took ${Math.round(ms)} ms` : null), ms };
}

/** A table of a gibibyte, most of it a hole in the file; the command is given an eighth of that as memory. */
function hugeTable(): string | null {
  const dir = mkdtempSync(join(tmpdir(), 'salvor-huge-'));
  const path = join(dir, 'pads.csv');
  const file = openSync(path, 'w');
  writeSync(file, 'pin,x_mm,y_mm,w_mm,h_mm\n');
  ftruncateSync(file, 2 ** 30);
  closeSync(file);
  try {
    const { status, stderr } = spawnSync(
      process.execPath,
      ['--max-old-space-size=128', CLI, '--home', join(dir, 'bench'), 'fit', path, path],
      {
        encoding: 'utf8',
      },
    );
    return status === 2 && /has more than 8 MiB/.test(stderr) ? null : `ended with ${String(status)}: ${stderr.slice(0, 200)}`;
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

/** Everything hostile that is read from a file of this machine, and how it was met. */
export function meetFiles(): Met[] {
  return [
    ...hostileNetlists().map(({ name, text, refused }) => meet(`netlist: ${name}`, () => solve(text, refused))),
    ...Object.entries(YAML).map(([name, text]) => meet(`model: ${name}`, () => refusal(readYaml(text)))),
    ...Object.entries(PATTERNS).map(([name, text]) => meet(`land pattern: ${name}`, () => refusal(readKicadMod(text)))),
    meet('a table of a gibibyte', hugeTable),
  ];
}
