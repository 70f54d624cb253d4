import { execFile } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Fuzzed } from '../hostile/fuzz.ts';
import { PARSERS } from '../hostile/parsers.ts';
import { round, type Figure, type Progress } from './figure.ts';

const INPUTS = 1_000_000;
const SEED = 42;

type Named = Fuzzed & { readonly name: string };

/** How each reader of texts meets a million made ones; each in a process of its own, as many at a time as there are cores. */
export async function fuzzFigures(progress: Progress): Promise<Figure[]> {
  const names = PARSERS.map(({ name }) => name);
  const results: Named[] = [];
  const turn = async (): Promise<void> => {
    for (let name = names.shift(); name !== undefined; name = names.shift()) {
      progress(`Trying ${INPUTS.toLocaleString('en')} texts on the reader of ${name} …`);
      results.push({ name, ...(await fuzzOne(name)) });
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, turn));
  return figuresOf(results);
}

async function fuzzOne(name: string): Promise<Fuzzed> {
  const script = join(import.meta.dirname, 'fuzz-one.mjs');
  const { stdout } = await promisify(execFile)(process.execPath, [script, name, `${SEED}`, `${INPUTS}`], { maxBuffer: 2 ** 26 });
  return JSON.parse(stdout) as Fuzzed;
}

function figuresOf(results: readonly Named[]): Figure[] {
  const crashes = results.filter(({ crash }) => crash !== null);
  const shares = results.map(({ name, taken, tried, slowestMs }) => `${name} ${round(taken / tried, 2)} (${Math.round(slowestMs)} ms)`);
  return [
    {
      figure: 'trust.fuzz_inputs',
      value: Math.min(...results.map(({ tried }) => tried)),
      unit: '',
      target: '≥ 1000000',
      reference: `texts tried on each reader, made of good ones by up to six edits; share that was taken, and the slowest: ${shares.join(', ')}`,
    },
    {
      figure: 'trust.fuzz_crashes',
      value: crashes.length,
      unit: '',
      target: '= 0',
      reference: `readers of ${results.length} that fell over, refused without a word or took more than 2 s${crashes.map(({ name, crash }) => `; ${name}: ${crash!.error}`).join('')}`,
    },
  ];
}
