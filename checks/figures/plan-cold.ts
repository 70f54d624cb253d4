import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { randomPile } from '../planning/random-pile.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';

const RUNS = 5;
const TARGETS = { 15: 2.5, 50: 2.5, 200: 2.5, 500: 3 } as const;
const ROOT = join(import.meta.dirname, '../..');

/** Seconds from starting a process until it has planned a pile that it reads from a file. */
export async function coldFigures(progress: Progress): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'salvor-plan-'));
  try {
    const figures: Figure[] = [];
    for (const units of [15, 50, 200, 500] as const) {
      progress(`planning ${units} units in processes of their own`);
      const runs: Run[] = [];
      for (let run = 0; run < RUNS; run++) {
        const file = join(folder, 'pile.json');
        writeFileSync(file, JSON.stringify(randomPile({ units, seed: `cold ${run}` })));
        runs.push(await runOn(file));
      }
      const seconds = runs.map(({ wallS }) => wallS);
      figures.push({
        figure: `plan.s${units}`,
        value: round(quantile(seconds, 0.5)),
        unit: 's',
        target: `≤ ${TARGETS[units]}`,
        reference: `median of ${RUNS} piles of 5 models × 8 slots, 3 suppliers, 20 h, a cold process each, from its start to the plan with everything that is said about it; slowest ${round(Math.max(...seconds))} s; processor time of all its threads ${round(
          quantile(
            runs.map(({ cpuS }) => cpuS),
            0.5,
          ),
        )} s`,
      });
    }
    return figures;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

interface Run {
  readonly wallS: number;
  readonly cpuS: number;
}

async function runOn(file: string): Promise<Run> {
  const started = performance.now();
  const child = spawn(process.execPath, [join(ROOT, 'checks/figures/plan-cold.mjs'), join(ROOT, 'dist'), file], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  return new Promise((resolve, reject) => {
    let run: Run | null = null;
    child.stdout.on('data', (line: Buffer) => {
      const { cpuS } = JSON.parse(line.toString()) as { cpuS: number };
      run = { wallS: (performance.now() - started) / 1000, cpuS };
    });
    child.on('error', reject);
    child.on('close', (code) => (run ? resolve(run) : reject(new Error(`the planning process stopped with code ${code}`))));
  });
}
