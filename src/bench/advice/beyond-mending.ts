import type { Model } from '../models/index.ts';
import type { HistoryEntry, Item } from '../state.ts';
import type { ProofView } from '../views/index.ts';
import { adviceId } from './advice-id.ts';
import { PROOF_OF_FUNCTION } from './evidence.ts';
import { needsDonor } from './workshop.ts';

/**
 * Names of the steps of proof that failed and that nothing more can be done about by mending: each remedy of the model was
 * declined or tried before, or the person has put the step aside. A step of a function is left to belief, of which it is evidence.
 */
export function beyondMending(item: Item, life: readonly HistoryEntry[], model: Model, proof: ProofView): readonly string[] {
  const failed = proof.steps.filter(({ id, outcome }) => outcome === 'fail' && !id.startsWith(PROOF_OF_FUNCTION));
  if (failed.length === 0) return [];
  const tried = new Set(life.flatMap((entry) => (entry.kind === 'remedy' ? [entry.remedy] : [])));
  const left = model.file.remedies.filter(
    (spec) => !needsDonor(spec) && !tried.has(spec.id) && !item.declined.has(adviceId('remedy', spec.id)),
  );
  return failed.filter(({ id }) => left.length === 0 || item.declined.has(adviceId('prove', id))).map(({ name }) => name);
}
