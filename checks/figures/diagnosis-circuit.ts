import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { drawBoards, type Draw } from '../../src/core/circuit/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { CIRCUITS, FAULTS } from '../circuit/circuits.ts';
import { voltageDifferences } from '../circuit/compare-voltages.ts';
import { ngspiceVoltages } from '../circuit/ngspice.ts';
import { TREES } from '../circuit/regulator-trees.ts';
import { POWER, studyBoard, type StudyBoard } from './diagnosis-board.ts';
import { ForeignBoard } from './diagnosis-foreign.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';

const POWERED_DRAWS = 32;
const UNPOWERED_DRAWS = 16;
/** Faults that the general simulator is timed on; operating points that it computes again in one run; and points of a sweep. */
const SAMPLE = 24;
const AGAIN = 5;
const SWEEP = 200;

/** How fast and how right the circuit is: all operating points of the study's faults, beside a general simulator in the same run. */
export async function circuitFigures(progress: Progress): Promise<Figure[]> {
  const board = studyBoard();
  progress(
    `Solving the healthy board and ${board.circuitFaults.length} faults on ${POWERED_DRAWS} drawn boards, six times, and unpowered …`,
  );
  const own = ownSpeed(board);
  const seconds = quantile(
    own.powered.slice(1).map((run) => run.seconds),
    0.5,
  );
  const operatingPoints = (board.circuitFaults.length + 1) * POWERED_DRAWS;
  progress(`Solving ${SAMPLE} of them with the general simulator …`);
  const other = await foreignSpeed(board);
  progress('Comparing node voltages with the general simulator …');
  const difference = await largestDifference();
  const each = seconds / operatingPoints;
  const { nodes, parts } = board.netlist;
  const about = `${nodes.length} nodes, ${parts.length} parts, ${board.circuitFaults.length + 1} states × ${POWERED_DRAWS} draws`;
  const sampled = `extrapolated an operating point from ${other.solved} of ${SAMPLE} sampled faults, which it solved`;
  return [
    {
      figure: 'diagnosis.powered_cpu_s',
      value: round(seconds),
      unit: 's',
      target: '≤ 1',
      reference: `${about}; median of 5 runs, the first in the process took ${round(own.powered[0]!.seconds)} s; every net with the meter at it, edits of the netlist included`,
    },
    {
      figure: 'diagnosis.powered_failures',
      value: own.powered.reduce((sum, run) => sum + run.failures, 0),
      unit: '',
      target: '= 0',
      reference: `${own.powered.length} × ${operatingPoints} operating points`,
    },
    {
      figure: 'diagnosis.ngspice_loop_ratio',
      value: round(other.loopS / each),
      unit: '×',
      target: '≥ 200',
      reference: `${round(other.loopS * 1e3)} ms against ${round(each * 1e6)} µs; ${sampled}; netlist read and results written each time; behavioural parts as expression sources`,
    },
    {
      figure: 'diagnosis.ngspice_compute_ratio',
      value: round(other.computeS / each),
      unit: '×',
      target: '≥ 20',
      reference: `${round(other.computeS * 1e3)} ms an operating point computed again in the same run, nothing read or written, from nothing each time as it always does, where ours starts from a like board; same faults. Its easiest case, a sweep of one supply over 1 mV, each point from the one before: ${round(other.sweepS * 1e3)} ms, ${round(other.sweepS / each)} ×`,
    },
    {
      figure: 'diagnosis.voltage_max_rel',
      value: round(difference.largest),
      unit: '',
      target: '≤ 0.0001',
      reference: `${difference.nodes} nodes of ${difference.circuits} circuits, healthy and faulty, with the same 1 GΩ from each node to ground`,
    },
    {
      figure: 'diagnosis.dictionary_cpu_s',
      value: round(own.unpowered.seconds),
      unit: 's',
      target: '≤ 20',
      reference: `same states × ${UNPOWERED_DRAWS} draws × ${own.points} points, ohms and diode mode on every net; ${own.unpowered.failures} failures`,
    },
  ];
}

interface Run {
  readonly seconds: number;
  readonly failures: number;
}

/** The built engine in its own process. */
function ownSpeed({ netlist, circuitFaults }: StudyBoard): { powered: Run[]; unpowered: Run; points: number } {
  const draws = (count: number, seed: string): { scale: number[]; severity: number }[] =>
    drawBoards(netlist, count, randomStream(seed)).map(({ scale, severity }) => ({ scale: [...scale], severity }));
  const input = JSON.stringify({
    netlist,
    sets: [[], ...circuitFaults.map((fault) => [fault])],
    poweredDraws: draws(POWERED_DRAWS, 'powered'),
    unpoweredDraws: draws(UNPOWERED_DRAWS, 'unpowered'),
    state: POWER,
    nodes: netlist.nodes.filter((node) => !node.includes('.')),
  });
  const script = join(process.cwd(), 'checks/figures/circuit-speed.mjs');
  return JSON.parse(execFileSync(process.execPath, [script], { input, encoding: 'utf8', maxBuffer: 2 ** 26 }));
}

/** CPU seconds of one operating point by the general simulator: in the loop, computing alone, and as a point of a sweep. */
async function foreignSpeed(board: StudyBoard): Promise<{ loopS: number; computeS: number; sweepS: number; solved: number }> {
  const [draw] = drawBoards(board.netlist, 1, randomStream('powered'));
  const step = board.circuitFaults.length / SAMPLE;
  const texts = Array.from({ length: SAMPLE }, (_, i) => textOf(board, Math.floor(i * step), draw!)).filter((text) => text !== undefined);
  await ngspiceVoltages(texts[0]!);
  let [loop, compute, sweep, solved] = [0, 0, 0, 0];
  for (const text of texts) {
    const single = await timed(text);
    const again = await timed(text.replace(/^\.end$/m, `.control\nrepeat ${AGAIN}\nop\nend\n.endc\n.end`));
    const swept = await timed(text.replace(/^\.op$/m, sweepOf(text)));
    if (single === undefined || again === undefined || swept === undefined) continue;
    loop += single;
    compute += Math.max(again - single, 0) / AGAIN;
    sweep += Math.max(swept - single, 0) / (SWEEP - 1);
    solved++;
  }
  return { loopS: loop / solved, computeS: compute / solved, sweepS: sweep / solved, solved };
}

/** The netlist of a fault for the general simulator; undefined where a part has lost the ground that its law is written against. */
function textOf(board: StudyBoard, fault: number, draw: Draw): string | undefined {
  const foreign = new ForeignBoard(board, [fault], draw);
  return foreign.canBeWritten ? foreign.text('', POWER) : undefined;
}

/** A sweep of the first voltage source over 1 mV. */
function sweepOf(text: string): string {
  const [, name, volt] = /^(V\S+) \S+ \S+ (\S+)$/m.exec(text)!;
  const from = Number(volt);
  return `.dc ${name} ${from} ${from + 1e-3} ${1e-3 / (SWEEP - 1)}`;
}

async function timed(text: string): Promise<number | undefined> {
  const before = process.cpuUsage();
  const voltages = await ngspiceVoltages(text);
  const { user, system } = process.cpuUsage(before);
  return voltages ? (user + system) / 1e6 : undefined;
}

async function largestDifference(): Promise<{ largest: number; nodes: number; circuits: number }> {
  const pairs: (readonly [string, string])[] = [
    ...Object.values(CIRCUITS).map((text) => [text, text] as const),
    ...FAULTS.map(({ circuit, from, to }) => CIRCUITS[circuit]!.replace(from, to)).map((text) => [text, text] as const),
    ...TREES.map(({ ours, theirs }) => [ours, theirs] as const),
  ];
  let [largest, nodes] = [0, 0];
  for (const [ours, theirs] of pairs) {
    const differences = await voltageDifferences(ours, theirs);
    nodes += differences.length;
    largest = Math.max(largest, ...differences);
  }
  return { largest, nodes, circuits: pairs.length };
}
