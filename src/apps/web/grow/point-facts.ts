import { modelIdFor } from '../../../bench/grow/new-model.ts';
import type { MeterMode, Stage } from '../../../bench/events/index.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import type { FactAnswer } from '../actions/set-fact.ts';
import { cautionsAt } from './reading-walk.ts';

export const POWERS = [
  { id: 'off', name: 'Off' },
  { id: 'battery', name: 'On its battery' },
  { id: 'charger', name: 'On its charger' },
] as const;

/** What a person says of a new point. */
export interface PointFields {
  readonly name: string;
  readonly block: string;
  readonly mode: MeterMode;
  readonly power: 'off' | 'battery' | 'charger';
  readonly stage: Stage;
  readonly side: 'front' | 'back';
  /** Place on the board, mm. */
  readonly at?: readonly [number, number];
}

/** A place and a way to measure it, with the check that asks for it, as entries of the model; its id is made of the name unless one is given. */
export function pointFacts(file: ModelFile, fields: PointFields, given?: string): FactAnswer[] {
  const { name, stage } = fields;
  const id = given ?? modelIdFor(name, (taken) => file.points.some((point) => point.id === taken));
  const measure = modelIdFor(`measure ${id}`, (taken) => file.checks.some((check) => check.id === taken));
  const cautions = cautionsAt(file, fields);
  return [
    { section: 'points', id, value: fields },
    { section: 'checks', id: measure, value: { name: `Measure ${name}`, minutes: 1, stage, measure: id, cautions } },
  ];
}
