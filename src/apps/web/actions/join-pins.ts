import type { PinsJoined } from '../../../core/netting/index.ts';
import type { Gesture } from './gesture.ts';

/** What the meter said between pins of a board. */
export const joinPins = (modelId: string, { pins, joined }: PinsJoined): Gesture => ({
  said: `${pins.join(' and ')} ${joined ? 'are joined' : 'are not joined'}`,
  drafts: [{ kind: 'model-pins-joined', body: { model_id: modelId, pins: [...pins], joined } }],
});
