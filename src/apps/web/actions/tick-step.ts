import { stepEvents, type StepTicked } from '../../../bench/hands/step-events.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import type { Gesture } from './gesture.ts';

/** A step of opening is done, or put back, with the count of its fasteners; what is missing or foreign is noted as found. */
export const tickStep = (file: ModelFile, ticked: StepTicked): Gesture => ({
  said: `${file.steps.find(({ id }) => id === ticked.step)?.name ?? ticked.step}${ticked.way === 'back' ? ', put back' : ''}`,
  drafts: stepEvents(file, ticked),
});
