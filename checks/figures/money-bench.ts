import { join } from 'node:path';
import { deviceModelOf } from '../../src/bench/advice/device-model.ts';
import { foldLog } from '../../src/bench/fold/index.ts';
import { learnedModel, withLearned } from '../../src/bench/learning/index.ts';
import { chanceBefore } from '../../src/bench/learning/learned-remedies.ts';
import type { Model, ModelFile } from '../../src/bench/models/index.ts';
import { testLog, type Step } from '../../src/bench/testing/events.ts';
import { believe, repairPlan } from '../../src/core/diagnosis/index.ts';
import type { DeviceModel, Evidence, Stakes } from '../../src/core/diagnosis/model.ts';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';

export const UNITS = 300;
export const LEARNED_FROM = 100;

/** A model as the device really is at this person's bench: its numbers moved away from those that ship. */
export interface World {
  readonly shipped: Model;
  readonly truth: Model;
}

export async function worldOf(seed: string): Promise<World> {
  const shipped = await shippedModel();
  const random = randomStream(`world ${seed}`);
  const faults = shipped.file.faults.map((fault) => ({ ...fault, rate: fault.rate * Math.exp(0.9 * normal(random)) }));
  const all = faults.reduce((sum, { rate }) => sum + rate, 0);
  const total = shipped.file.faults.reduce((sum, { rate }) => sum + rate, 0);
  const remedies = shipped.file.remedies.map((remedy) => {
    const shift = 0.9 * normal(random);
    const mends = Object.entries(remedy.mends).map(([id, chance]) => [id, 1 / (1 + Math.exp(-(Math.log(chance / (1 - chance)) + shift)))]);
    return {
      ...remedy,
      minutes: remedy.minutes * Math.exp(0.45 * normal(random)),
      mends: Object.fromEntries(mends) as Record<string, number>,
    };
  });
  const file: ModelFile = { ...shipped.file, faults: faults.map((fault) => ({ ...fault, rate: (fault.rate * total) / all })), remedies };
  return { shipped, truth: { ...shipped, file } };
}

let loaded: Promise<Model> | undefined;
async function shippedModel(): Promise<Model> {
  loaded ??= loadModels(join(import.meta.dirname, '../../models')).then(({ models }) => models.get('tern-tn10')!);
  return loaded;
}

/** A normal number from two uniform ones. Box & Muller (1958). */
export const normal = (random: RandomStream): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** One faulty unit and what luck has in store for it: the same for whoever works on it. */
interface Fate {
  readonly fault: ModelFile['faults'][number];
  /** By remedy: a uniform number, below its true chance it mends; and the factor on its minutes. */
  readonly luck: (remedy: string) => number;
  readonly pace: (remedy: string) => number;
  readonly trials: readonly Evidence[];
}

function fateOf({ truth }: World, seed: string, unit: number): Fate {
  const random = randomStream(`${seed} unit ${unit}`);
  const { faults, functions } = truth.file;
  const fault =
    faults[
      drawn(
        faults.map(({ rate }) => rate),
        random,
      )
    ]!;
  const device = deviceModelOf(truth);
  const behaves = device.faults.find(({ id }) => id === fault.id)!.behaves;
  const trials = functions.map(({ id, needs }): Evidence => {
    const concerned = needs.some((need) => need === fault.block);
    const outcomes = ['works', 'fails', 'comes-and-goes'] as const;
    const outcome = concerned
      ? outcomes[
          drawn(
            outcomes.map((each) => behaves[each]),
            random,
          )
        ]!
      : 'works';
    return { id: `try ${id}`, kind: 'trial', function: id, outcome, with: [] };
  });
  const luck = new Map(truth.file.remedies.map(({ id }) => [id, [random(), Math.exp(0.3 * normal(random))] as const]));
  return { fault, trials, luck: (id) => luck.get(id)![0], pace: (id) => luck.get(id)![1] };
}

function drawn(weights: readonly number[], random: RandomStream): number {
  let left = random() * weights.reduce((sum, weight) => sum + weight, 0);
  return Math.max(
    0,
    weights.findIndex((weight) => (left -= weight) < 0),
  );
}

export interface Result {
  readonly profitMinor: number;
  readonly done: readonly { readonly remedy: string; readonly minutes: number; readonly mended: boolean }[];
}

const STAKES: Stakes = {
  workingMinor: 3800,
  asIsMinor: 900,
  hourMinor: 1500,
  openingMinutes: { open: 5, 'board-out': 6 },
  stage: 'closed',
};

/** Works on one unit as the plan for what is believed says, with the numbers of `model`; what happens is up to the truth. */
function workOn(world: World, model: Model, fate: Fate): Result {
  const device = ownWork(model);
  const plan = repairPlan(device, believe(device, fate.trials), STAKES);
  const done: Result['done'][number][] = [];
  let profitMinor = 0;
  for (const { remedy } of plan.steps) {
    const spec = world.truth.file.remedies.find(({ id }) => id === remedy.id)!;
    const minutes = spec.minutes * fate.pace(remedy.id);
    const mended = fate.luck(remedy.id) < (spec.mends[fate.fault.id] ?? 0);
    profitMinor -= ((minutes + 2) / 60) * STAKES.hourMinor + remedy.partsCostMinor;
    done.push({ remedy: remedy.id, minutes, mended });
    if (mended) return { profitMinor: profitMinor + STAKES.workingMinor, done };
  }
  return { profitMinor: profitMinor + STAKES.asIsMinor, done };
}

/** Without transplants, which need a donor. */
function ownWork(model: Model): DeviceModel {
  const device = deviceModelOf(model);
  const swaps = new Set(model.file.remedies.filter(({ kind }) => kind === 'transplant').map(({ id }) => id));
  return { ...device, remedies: device.remedies.filter(({ id }) => !swaps.has(id)) };
}

/** What a bench of one world earns and learns: `learned` after the first units, profits of the rest by both sets of numbers. */
export interface BenchRun {
  readonly shippedMinor: readonly number[];
  readonly learnedMinor: readonly number[];
  readonly covered: readonly boolean[];
}

export async function runBench(seed: string): Promise<BenchRun> {
  const world = await worldOf(seed);
  const fates = Array.from({ length: UNITS }, (_, unit) => fateOf(world, seed, unit));
  const first = fates.slice(0, LEARNED_FROM).map((fate) => ({ fate, result: workOn(world, world.shipped, fate) }));
  const state = foldLog(
    testLog(...first.flatMap(({ fate, result }, unit) => stepsOf(world.shipped, fate, result, unit))),
    new Map([[world.shipped.file.id, world.shipped]]),
  );
  const own = learnedModel(state, world.shipped);
  const { numbers } = own;
  const learned = withLearned(world.shipped, own, 'study');
  const rest = fates.slice(LEARNED_FROM);
  return {
    shippedMinor: rest.map((fate) => workOn(world, world.shipped, fate).profitMinor),
    learnedMinor: rest.map((fate) => workOn(world, learned, fate).profitMinor),
    covered: numbers.flatMap(({ about, id, low, high, jobs }) => {
      const truth = jobs.length > 0 ? trueNumber(world, about, id) : null;
      return truth === null ? [] : [truth >= low && truth <= high];
    }),
  };
}

/** What a learned number should have been; null for what the world does not fix. */
function trueNumber({ truth, shipped }: World, about: string, id: string): number | null {
  const name = id.split('.').slice(2).join('.');
  const remedy = truth.file.remedies.find((each) => each.id === name);
  if (about === 'remedy-time') return remedy!.minutes;
  if (about === 'remedy-chance') return chanceBefore(truth.file, remedy!);
  if (about !== 'fault-rate') return null;
  const all = truth.file.faults.reduce((sum, { rate }) => sum + rate, 0);
  return shipped ? truth.file.faults.find((each) => each.id === name)!.rate / all : null;
}

function stepsOf(model: Model, fate: Fate, result: Result, unit: number): Step[] {
  const item_id = `unit-${unit}`;
  const items = [{ item_id, name: 'Unit', model_id: model.file.id, expected_value_minor: 1000 }];
  return [
    ['lot-bought', { lot_id: `lot-${unit}`, title: 'A unit', seller: 'Somebody', price_minor: 900, currency: 'GBP', items }],
    ...fate.trials.flatMap((trial): Step[] =>
      trial.kind === 'trial' ? [['trial-done', { item_id, function: trial.function, outcome: trial.outcome }]] : [],
    ),
    ...result.done.map(({ remedy, minutes, mended }): Step => [
      'remedy-done',
      { item_id, remedy, minutes: Math.round(10 * minutes) / 10, outcome: mended ? 'mended' : 'not-mended' },
    ]),
    ['kept', { item_id }],
  ];
}
