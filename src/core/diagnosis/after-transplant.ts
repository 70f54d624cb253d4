import { beliefOf, type Belief } from './belief.ts';
import type { DeviceModel } from './model.ts';
import { normalise } from './posterior-over-sets.ts';
import { transplantTransition } from './transitions.ts';

/** What would be believed once these blocks come from elsewhere, with the chances of the faults that they bring: as `believe` has it after such evidence. */
export function afterTransplant(
  model: DeviceModel,
  { space, weights, absent, odd }: Belief,
  blocks: readonly string[],
  incoming: Readonly<Record<string, number>>,
): Belief {
  const after = transplantTransition(model, space, blocks, incoming).forward(weights);
  normalise(after);
  return beliefOf(model, space, after, new Set([...absent].filter((block) => !blocks.includes(block))), odd);
}
