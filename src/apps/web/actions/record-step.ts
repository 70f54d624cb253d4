import type { ModelFile } from '../../../bench/models/index.ts';
import { recordedStep, stepName, type StepFields } from '../grow/opening-record.ts';
import type { Gesture } from './gesture.ts';

/** A step of opening as it was just done. */
export const recordStep = (file: ModelFile, fields: StepFields): Gesture => ({
  said: stepName(fields),
  drafts: [{ kind: 'model-step-recorded', body: { model_id: file.id, ...recordedStep(fields, file) } }],
});
