import type { PinNamed } from '../../../core/netting/index.ts';
import type { Gesture } from './gesture.ts';

/** A name for the net of one or several pins, as a node of the netlist. */
export const nameNet = (modelId: string, names: readonly PinNamed[]): Gesture => ({
  said: names.map(({ pin, name }) => `the net of ${pin} is ${name === '0' ? 'ground' : name}`).join(', '),
  drafts: names.map(({ pin, name }) => ({ kind: 'model-net-named', body: { model_id: modelId, pin, name } })),
});
