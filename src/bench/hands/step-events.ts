import type { FindingKind } from '../events/index.ts';
import { screwCount } from './screw-count.ts';
import type { ModelFile } from '../models/index.ts';

/** A step that was ticked, and what came out of it or went in: `count` of its fasteners, `foreign` of them of another kind. */
export interface StepTicked {
  readonly itemId: string;
  readonly step: string;
  readonly way: 'in' | 'back';
  readonly minutes: number;
  /** Null where they were not counted, or the step has none. */
  readonly counted: { readonly count: number; readonly foreign: number } | null;
}

export type StepEvent =
  | { readonly kind: 'step-done'; readonly body: { item_id: string; step: string; way: 'in' | 'back'; minutes: number } }
  | {
      readonly kind: 'fasteners-counted';
      readonly body: { item_id: string; fasteners: string; way: 'out' | 'back'; count: number; foreign: number };
    }
  | { readonly kind: 'finding-noted'; readonly body: { item_id: string; place: string; sees: FindingKind; text: string } };

/** What a tick puts into the log: the step, the count of its fasteners, and on the way in a finding for those that are missing or of another kind. */
export function stepEvents(file: Pick<ModelFile, 'steps' | 'fasteners'>, ticked: StepTicked): StepEvent[] {
  const { itemId: item_id, step, way, minutes, counted } = ticked;
  const done: StepEvent = { kind: 'step-done', body: { item_id, step, way, minutes } };
  const set = file.steps.find(({ id }) => id === step)?.fasteners;
  if (set === undefined || counted === null) return [done];
  const { count, foreign } = counted;
  const noted: StepEvent = {
    kind: 'fasteners-counted',
    body: { item_id, fasteners: set, way: way === 'in' ? 'out' : 'back', count, foreign },
  };
  const findings = way === 'in' ? screwCount(file, [{ set, count, foreign }], []).findings : [];
  return [
    done,
    noted,
    ...findings.map(({ sees, text }): StepEvent => ({ kind: 'finding-noted', body: { item_id, place: set, sees, text } })),
  ];
}
