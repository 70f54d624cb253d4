import { CAUTION_WORDS } from '../../../bench/caution-words.ts';
import type { Caution } from '../../../bench/models/index.ts';
import type { ItemFile } from '../../../bench/views/index.ts';
import { proofAdviceId } from './leave-bench.ts';
import { modelOf, type Workplace } from './workplace.ts';

/** Says what the next piece of work asks for, before it is done; each danger once for a unit, remembered in `said`. */
export function sayCautions(place: Workplace, file: ItemFile, said: Set<Caution>): void {
  for (const caution of cautionsOf(place, file)) {
    if (said.has(caution)) continue;
    said.add(caution);
    place.say(`    ! ${CAUTION_WORDS[caution]}`);
  }
}

function cautionsOf(place: Workplace, file: ItemFile): readonly Caution[] {
  const { advice, proof } = file;
  if (advice.do === 'part-out') return modelOf(place, file).file.slots.flatMap((slot) => slot.cautions);
  if (advice.do === 'prove') return proof.steps.find((step) => proofAdviceId(step.id) === advice.id)?.cautions ?? [];
  return (advice.check ?? advice.remedy)?.cautions ?? [];
}
