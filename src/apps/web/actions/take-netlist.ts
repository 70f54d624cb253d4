import type { PlacementImportView } from '../../../bench/views/index.ts';
import type { Gesture } from './gesture.ts';

/** A netlist taken over into a model that grows. */
export const takeNetlist = (modelId: string, text: string): Gesture => ({
  said: 'a netlist',
  drafts: [{ kind: 'model-netlist-set', body: { model_id: modelId, text, from: 'imported' } }],
});

/** The parts of a table of places, put onto the picture of a model. */
export const takePlacement = (modelId: string, parts: PlacementImportView['parts']): Gesture => ({
  said: `${parts.length} parts and their places`,
  drafts: [{ kind: 'model-parts-placed', body: { model_id: modelId, parts } }],
});
