import type { Fault } from '../../core/diagnosis/model.ts';
import type { ModelFile } from './schema.ts';

type Mode = ModelFile['faults'][number]['mode'];

/**
 * How a function behaves that needs a block with such a fault, where the model does not say: chances of failing, of
 * coming and going, of working all the same. Common practice, no source.
 */
const BY_MODE: Readonly<Record<Mode, readonly [fails: number, comesAndGoes: number, works: number]>> = {
  open: [0.85, 0.1, 0.05],
  short: [0.95, 0.03, 0.02],
  leaky: [0.4, 0.4, 0.2],
  drifted: [0.35, 0.35, 0.3],
  missing: [0.95, 0.02, 0.03],
  bridged: [0.85, 0.1, 0.05],
  dead: [0.96, 0.02, 0.02],
  'dirty-contact': [0.4, 0.5, 0.1],
  worn: [0.45, 0.4, 0.15],
  cracked: [0.6, 0.3, 0.1],
  flat: [0.9, 0.08, 0.02],
};

/** The behaviour of a fault as diagnosis wants it: from the model, else by its mode. What the model states is scaled to add up to 1. */
export function behaviourOf(fault: ModelFile['faults'][number]): Fault['behaves'] {
  const [fails, comesAndGoes, works] = fault.behaves
    ? [fault.behaves.fails, fault.behaves.comes_and_goes, fault.behaves.works]
    : BY_MODE[fault.mode];
  const sum = fails + comesAndGoes + works;
  if (!(sum > 0)) return behaviourOf({ ...fault, behaves: undefined });
  return { works: works / sum, fails: fails / sum, 'comes-and-goes': comesAndGoes / sum };
}
