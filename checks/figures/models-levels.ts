import { standIns } from '../../src/bench/advice/board/stand-ins.ts';
import type { Model } from '../../src/bench/models/index.ts';
import { level2Models } from '../models/level-2-board.ts';
import { levelOneOf, levelZeroOf, POWER_TREE, treeOf } from '../models/stripped-models.ts';
import { NoAnswer } from './diagnosis-sessions.ts';
import { round, type Figure, type Progress } from './figure.ts';
import { knowerByBlocks, knowerByCircuit, type Knower } from './models-knower.ts';
import { blocksBy, workOn, type Finished } from './models-session.ts';
import { hiddenFaults, type HiddenFault } from './models-truth.ts';

const CASES = 50;
const SEED = 'boards never looked at: levels of a model';

interface Level {
  readonly name: string;
  readonly knower: Knower;
  readonly words: string;
}

/** What each level of the Tern TN-20's model loses: the same hidden faults on the same boards, answered by its whole circuit. */
export async function levelFigures(progress: Progress, cases = CASES, seed = SEED): Promise<Figure[]> {
  const whole = (await level2Models()).get('tern-tn20')!;
  progress('Computing the whole Tern TN-20, and its power tree alone …');
  const full = knowerByCircuit(whole, whole);
  const tree = knowerByCircuit(await treeOf(whole), whole);
  const levels: readonly Level[] = [
    { name: 'level0', knower: knowerByBlocks(levelZeroOf(whole), whole), words: 'blocks alone' },
    { name: 'level1', knower: knowerByBlocks(levelOneOf(whole), whole), words: 'with readings of good boards' },
    { name: 'tree', knower: tree, words: 'the power tree drawn, the rest unknown loads' },
    { name: 'level2', knower: full, words: 'the whole netlist' },
  ];
  const { faults } = full.known.knowledge;
  const rates = full.device.faults.slice(0, faults.length).map(({ rate }) => rate);
  const mends = mendsOn(full);
  const right = groupRight(whole, full);
  const ofSupply = rates.map((rate, i) => (POWER_TREE.has(faults[i]!.block) ? rate : 0));
  return levels.flatMap(({ name, knower, words }) => {
    progress(`Working on ${cases} devices, ${words} …`);
    const work = (some: readonly number[], of: string): Finished[] =>
      hiddenFaults(whole, faults, some, cases, of).flatMap((truth) => finished(knower, truth, mends));
    const done = work(rates, seed);
    const isOfSupply = ({ truth }: Finished): boolean => POWER_TREE.has(truth.fault.block);
    const supply = name === 'tree' ? work(ofSupply, `${seed}, of the supply`) : done.filter(isOfSupply);
    return figuresOf({ name, words, knower, right, done, supply });
  });
}

/** Nothing where the simulator finds no operating point: such a device has no truth. */
function finished(knower: Knower, truth: HiddenFault, mends: (truth: HiddenFault, remedy: string) => number): Finished[] {
  try {
    return [workOn(knower, truth, (remedy) => mends(truth, remedy))];
  } catch (error) {
    if (error instanceof NoAnswer) return [];
    throw error;
  }
}

/** Chance that a remedy mends a fault, as the whole model has it. */
function mendsOn({ device }: Knower): (truth: HiddenFault, remedy: string) => number {
  const byId = new Map(device.remedies.map((remedy) => [remedy.id, remedy.mends]));
  return ({ fault }, remedy) => byId.get(remedy)?.[fault.id] ?? 0;
}

/** Whether the likeliest fault is, or stands for, one that no check tells from the hidden one. */
function groupRight(whole: Model, { known }: ReturnType<typeof knowerByCircuit>): (done: Finished) => boolean {
  const groups = known.groups();
  const stands = standIns(whole, known.knowledge);
  return ({ truth, belief }) => {
    const chances = new Map<number | string, number>();
    for (const [id, chance] of belief.marginal) {
      const group = groups.get(id) ?? id;
      chances.set(group, (chances.get(group) ?? 0) + chance);
    }
    const [best] = [...chances].sort((a, b) => b[1] - a[1]);
    const meant = typeof best![0] === 'number' ? [best![0]] : (stands.get(best![0]) ?? []).map(({ id }) => groups.get(id));
    return meant.includes(groups.get(truth.fault.id));
  };
}

interface Measured {
  readonly name: string;
  readonly words: string;
  readonly knower: Knower;
  readonly right: (done: Finished) => boolean;
  readonly done: readonly Finished[];
  readonly supply: readonly Finished[];
}

function figuresOf({ name, words, knower, right, done, supply }: Measured): Figure[] {
  const rank = ({ truth, belief }: Finished): number =>
    blocksBy(belief, knower.device).findIndex(({ block }) => block === truth.fault.block);
  const inTop = (some: readonly Finished[], most: number): number => share(some, (each) => rank(each) >= 0 && rank(each) < most);
  const of = (what: string, value: number, unit: string, reference: string, target = 'shown'): Figure => ({
    figure: `models.${name}_${what}`,
    value: round(value),
    unit,
    target,
    reference,
  });
  const same = `same ${done.length} devices, ${words}`;
  return [
    topFigure(name, words, { all: inTop(done, 3), supply: inTop(supply, 3), cases: done.length, ofSupply: supply.length }, of),
    of('block_right', inTop(done, 1), '', `${same}; at 90 % and more ${sureText(done, knower, rank)}`),
    of('group_right', share(done, right), '', `${same}; a group is what no check of the whole model tells apart`),
    of('probes', mean(done.map(({ checks }) => checks)), '', `${same}; every function was tried before`),
    of('minutes', mean(done.map(({ minutes }) => minutes)), 'min', same),
    of('cost_minor', mean(done.map(({ costMinor }) => costMinor)), 'minor units', `${same}; ${MONEY}`),
  ];
}

const MONEY = 'a working one brings 7200, as it is 2400, an hour costs 1500; a device whose fault is not mended costs 4800 and more';

/** Whether the block is among the three likeliest; of the power tree alone that is asked of faults of the supply. */
function topFigure(
  name: string,
  words: string,
  top: { readonly all: number; readonly supply: number; readonly cases: number; readonly ofSupply: number },
  of: (what: string, value: number, unit: string, reference: string, target?: string) => Figure,
): Figure {
  const about = `Tern TN-20 with one fault of the board by rate that stops a function, ${words}; until one block has 90 %, nothing tells 0.1 bits, or 12 checks`;
  const [supply, all] = [`of ${top.ofSupply} with a fault of the supply`, `of ${top.cases} with any fault`];
  if (name === 'tree') return of('top3', top.supply, '', `${supply}; ${about}; ${all} ${round(top.all)}`, '≥ 0.8');
  return of('top3', top.all, '', `${all}; ${about}; ${supply} ${round(top.supply)}`, name === 'level1' ? '≥ 0.75' : 'shown');
}

/** How often a block that has 90 % is the right one: more is not claimed than holds. */
function sureText(done: readonly Finished[], knower: Knower, rank: (done: Finished) => number): string {
  const sure = done.filter(({ belief }) => blocksBy(belief, knower.device)[0]!.chance >= 0.9);
  return sure.length === 0 ? 'none' : `${round(share(sure, (each) => rank(each) === 0))} of ${sure.length}`;
}

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;
const share = <T>(list: readonly T[], holds: (each: T) => boolean): number => list.filter(holds).length / list.length;
