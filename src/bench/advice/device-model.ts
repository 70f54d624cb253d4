import type { Check, DeviceFunction, DeviceModel, Remedy, TestPoint } from '../../core/diagnosis/model.ts';
import type { Model, ModelFile } from '../models/index.ts';
import { behaviourOf } from '../models/behaves-by-mode.ts';
import { referenceOf } from '../models/reference.ts';

const made = new WeakMap<Model, DeviceModel>();

/** What diagnosis needs of a model, with every remedy at the prices of the model. Made once for each model. */
export function deviceModelOf(model: Model): DeviceModel {
  const known = made.get(model);
  if (known) return known;
  const device = makeDeviceModel(model);
  made.set(model, device);
  return device;
}

function makeDeviceModel(model: Model): DeviceModel {
  const { file } = model;
  return {
    faults: file.faults.map((fault) => ({
      id: fault.id,
      block: fault.block,
      rate: fault.rate,
      behaves: behaviourOf(fault),
      seen: Object.fromEntries(Object.entries(fault.seen).filter(([, chance]) => chance !== undefined)) as Record<string, number>,
      shifts: fault.shifts,
    })),
    functions: file.functions.map(functionOf),
    accessories: file.accessories.map(({ id, block }) => ({ id, block })),
    points: file.points.map((point) => pointOf(model, point)),
    checks: file.checks.flatMap(checkOf),
    remedies: file.remedies.map((remedy) => remedyOf(file, remedy)),
    unknownRate: file.unknown_rate,
  };
}

const functionOf = (spec: ModelFile['functions'][number]): DeviceFunction => ({
  id: spec.id,
  needs: spec.needs.map((need) => (typeof need === 'string' ? [need] : need.any)),
});

const pointOf = (model: Model, point: ModelFile['points'][number]): TestPoint => ({
  id: point.id,
  block: point.block,
  mode: point.mode,
  reference: referenceOf(model, point.id, point.mode),
});

function checkOf(spec: ModelFile['checks'][number]): Check[] {
  const common = { id: spec.id, minutes: spec.minutes, stage: spec.stage };
  if (spec.try) return [{ ...common, kind: 'try', function: spec.try, with: spec.with }];
  if (spec.look) return [{ ...common, kind: 'look', block: spec.look }];
  return spec.measure ? [{ ...common, kind: 'measure', point: spec.measure }] : [];
}

const remedyOf = (file: ModelFile, spec: ModelFile['remedies'][number]): Remedy => ({
  id: spec.id,
  mends: spec.mends,
  minutes: spec.minutes,
  partsCostMinor: spec.parts.reduce((sum, { part, count }) => sum + count * partPrice(file, part), 0),
  risk: spec.risk,
  stage: spec.stage,
});

/** The model's own price for a part, minor units; 0 when it does not list the part. */
export const partPrice = (file: ModelFile, part: string): number => file.parts.find((known) => known.id === part)?.price ?? 0;

/** Blocks of the model that are part of the assembly in a slot. */
export const blocksOfSlot = (file: ModelFile, slot: string): string[] =>
  file.blocks.filter((block) => block.assembly === slot).map((block) => block.id);
