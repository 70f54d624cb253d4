import type { BenchEvent, Kind, Stored } from '../events/index.ts';
import { isForeign } from '../events/index.ts';
import { modelsWithGrown } from '../grow/models-with-grown.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { itemReceived, listingDropped, listingWeighed, lotBought } from './buying.ts';
import { adviceDeclined, claimMade, findingNoted, noteWritten, photoTaken, readingTaken, timeClocked, trialDone } from './evidence.ts';
import type { Apply, Fold, Missing } from './fold.ts';
import { grows, modelBegun, modelJudgedAgain, modelTakenIn } from './growing.ts';
import { fastenersCounted, stepDone } from './hands.ts';
import { kept, listed, returned, scrapped, sold } from './leaving.ts';
import { giveNumbers, namesMadeBy } from './numbers.ts';
import { orderArrived, orderCancelled, orderPlaced } from './orders.ts';
import { bagSet, partBought, partUsed } from './parts.ts';
import { learnedReset, learnedTakenIn, learningSet, wordsTaught } from './learning.ts';
import { feesSet, postageSet, saleSeen, saleTextSet, taxRuleSet } from './market.ts';
import { graded, proofStepDone, testDone } from './proof.ts';
import { differenceJudged, referenceSet } from './pictures.ts';
import { planChosen, planSet, supplierSet } from './planning.ts';
import { benchSet } from './settings.ts';
import { transplantDone } from './transplant.ts';
import { openedTo, remedyDone } from './work.ts';

/** Kinds that change how earlier events count: the log has to be folded again from its start. */
type Refolding = 'correction' | 'demo-put-away';

const APPLY: { readonly [K in Exclude<Kind, Refolding>]: Apply<K> } = {
  'bench-set': benchSet,
  'listing-weighed': listingWeighed,
  'listing-dropped': listingDropped,
  'lot-bought': lotBought,
  'item-received': itemReceived,
  'claim-made': claimMade,
  'trial-done': trialDone,
  'photo-taken': photoTaken,
  'finding-noted': findingNoted,
  'reading-taken': readingTaken,
  'step-done': stepDone,
  'fasteners-counted': fastenersCounted,
  'opened-to': openedTo,
  'remedy-done': remedyDone,
  'transplant-done': transplantDone,
  'part-bought': partBought,
  'bag-set': bagSet,
  'part-used': partUsed,
  'order-placed': orderPlaced,
  'order-arrived': orderArrived,
  'order-cancelled': orderCancelled,
  'proof-step-done': proofStepDone,
  'test-done': testDone,
  graded,
  listed,
  sold,
  returned,
  scrapped,
  kept,
  'sale-seen': saleSeen,
  'fees-set': feesSet,
  'postage-set': postageSet,
  'tax-rule-set': taxRuleSet,
  'sale-text-set': saleTextSet,
  'learning-set': learningSet,
  'learned-reset': learnedReset,
  'plan-set': planSet,
  'plan-chosen': planChosen,
  'supplier-set': supplierSet,
  'learned-taken-in': learnedTakenIn,
  'words-taught': wordsTaught,
  'model-begun': modelBegun,
  'model-fact-set': grows('model-fact-set'),
  'model-photo-set': grows('model-photo-set'),
  'model-parts-placed': grows('model-parts-placed'),
  'model-parts-removed': grows('model-parts-removed'),
  'model-pins-joined': grows('model-pins-joined'),
  'model-net-named': grows('model-net-named'),
  'model-netlist-set': grows('model-netlist-set'),
  'model-reading-taught': grows('model-reading-taught'),
  'model-step-recorded': grows('model-step-recorded'),
  'model-fit-seen': grows('model-fit-seen'),
  'model-taken-in': modelTakenIn,
  'model-judged-again': modelJudgedAgain,
  'reference-set': referenceSet,
  'difference-judged': differenceJudged,
  'note-written': noteWritten,
  'time-clocked': timeClocked,
  'advice-declined': adviceDeclined,
};

export const isRefolding = (kind: string): kind is Refolding => kind === 'correction' || kind === 'demo-put-away';

/**
 * Folds one more event into `state`, in place, and adds the ids of the items that changed to `touched`. Returns
 * 'refold' and leaves the state alone when the event changes how earlier ones count: then `foldLog` makes the state.
 * Total over valid events: what cannot be folded is kept as an orphan or as foreign. `shelf` are the models of the folders.
 */
export function applyEvent(
  state: BenchState,
  stored: Stored,
  shelf: ReadonlyMap<string, Model>,
  touched: Set<string> = new Set(),
): 'applied' | 'refold' {
  const { event, seq } = stored;
  if (!isForeign(event) && isRefolding(event.kind)) return 'refold';
  state.seq = seq;
  giveNumbers(state, event);
  if (isForeign(event)) {
    state.foreign.push(event);
    return 'applied';
  }
  if (event.at > state.newestAt) state.newestAt = event.at;
  if (event.device === 'demo') state.demo = 'present';
  const lack = applyKind({ state, shelf, models: modelsWithGrown(shelf, () => state), seq, touched }, event);
  if (lack) addOrphan(state, event, lack);
  return 'applied';
}

function applyKind(fold: Fold, event: BenchEvent): Missing | null {
  const apply = APPLY[event.kind as Exclude<Kind, Refolding>] as (fold: Fold, event: BenchEvent) => Missing | null;
  return apply(fold, event);
}

/** Keeps an event that could not be folded. What hangs on put-away things is put away with them. */
export function addOrphan(state: BenchState, event: BenchEvent, lack: Missing): void {
  const demo = state.putAway.has(lack.id);
  if (demo) for (const name of namesMadeBy(event)) state.putAway.add(name);
  state.orphans.push({ eventId: event.id, kind: event.kind, missing: `${lack.what} ${lack.id}`, demo });
}
