import type { Need, Reversible } from '../../core/teardown/index.ts';
import type { ModelFile } from '../models/index.ts';

export type StepSpec = ModelFile['steps'][number];

/** The steps of a model for the planner; `minutesOf` may put what was learned in the place of the model's word. */
export const teardownSteps = (file: ModelFile, minutesOf: (step: StepSpec) => number = ({ minutes }) => minutes): Reversible[] =>
  file.steps.map((step) => ({
    id: step.id,
    needs: [...step.after, ...step.after_any.map((any): Need => ({ any }))],
    tool: step.tool ?? null,
    side: step.side ?? null,
    minutes: minutesOf(step),
    risk: step.risk,
    putBack: step.put_back,
  }));
