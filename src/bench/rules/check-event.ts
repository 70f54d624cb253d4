import { isForeign, type AnyEvent, type BenchEvent, type Kind } from '../events/index.ts';
import { listingDropped, listingWeighed, lotBought } from './buying.ts';
import { correctionSound } from './correction.ts';
import { claimMade, findingNoted, readingTaken, remedyDone, trialDone } from './evidence.ts';
import * as growing from './growing.ts';
import { fastenersCounted, stepDone } from './hands.ts';
import { itemAtHand, itemKnown, modelKnown } from './known.ts';
import { graded, proofStepDone, returned, sold, standsAlone } from './leaving.ts';
import { benchSet } from './money.ts';
import { orderArrived, orderCancelled, orderPlaced } from './orders.ts';
import { bagSet, partBought, partUsed } from './parts.ts';
import { feesSet, postageSet, saleSeen, saleTextSet, taxRuleSet } from './market.ts';
import { planChosen, supplierSet } from './planning.ts';
import { differenceJudged, referenceSet } from './pictures.ts';
import type { Objection, Rule, RuleContext } from './rule.ts';
import { transplantDone } from './transplant.ts';

type OfItem = { readonly body: { readonly item_id: string } };
const aboutKnown = (context: RuleContext, { body }: OfItem): Objection | null => itemKnown(context, body.item_id);
const aboutAtHand = (context: RuleContext, { body }: OfItem): Objection | null => itemAtHand(context, body.item_id);
const aboutAlone = (context: RuleContext, { body }: OfItem): Objection | null => standsAlone(context, body.item_id);
const aboutKnownIfAny = (context: RuleContext, { body }: { body: { item_id?: string | undefined } }): Objection | null =>
  body.item_id === undefined ? null : itemKnown(context, body.item_id);

/** What must hold before each kind is taken. People forget to say that a parcel came: no rule asks for it. */
const RULES: { readonly [K in Kind]: Rule<K> } = {
  'bench-set': benchSet,
  'listing-weighed': listingWeighed,
  'listing-dropped': listingDropped,
  'lot-bought': lotBought,
  'item-received': aboutKnown,
  'claim-made': claimMade,
  'trial-done': trialDone,
  'photo-taken': aboutKnown,
  'finding-noted': findingNoted,
  'reading-taken': readingTaken,
  'step-done': stepDone,
  'fasteners-counted': fastenersCounted,
  'opened-to': aboutAtHand,
  'remedy-done': remedyDone,
  'transplant-done': transplantDone,
  'part-bought': partBought,
  'bag-set': bagSet,
  'part-used': partUsed,
  'order-placed': orderPlaced,
  'order-arrived': orderArrived,
  'order-cancelled': orderCancelled,
  'proof-step-done': proofStepDone,
  'test-done': aboutAtHand,
  graded,
  listed: aboutAlone,
  sold,
  returned,
  scrapped: aboutAlone,
  kept: aboutAlone,
  'sale-seen': saleSeen,
  'fees-set': feesSet,
  'postage-set': postageSet,
  'tax-rule-set': taxRuleSet,
  'sale-text-set': saleTextSet,
  'learning-set': () => null,
  'learned-reset': () => null,
  'plan-set': () => null,
  'plan-chosen': planChosen,
  'supplier-set': supplierSet,
  'learned-taken-in': (context, { body }) => modelKnown(context, body.model_id, 'body.model_id'),
  'words-taught': () => null,
  'model-begun': growing.modelBegun,
  'model-fact-set': growing.modelFactSet,
  'model-photo-set': growing.modelPhotoSet,
  'model-parts-placed': growing.modelPartsPlaced,
  'model-parts-removed': growing.modelPartsRemoved,
  'model-pins-joined': growing.modelPinsJoined,
  'model-net-named': growing.modelNetNamed,
  'model-netlist-set': growing.modelNetlistSet,
  'model-reading-taught': growing.modelReadingTaught,
  'model-step-recorded': growing.modelStepRecorded,
  'model-fit-seen': growing.modelFitSeen,
  'model-taken-in': growing.modelTakenIn,
  'model-judged-again': growing.modelJudgedAgain,
  'reference-set': referenceSet,
  'difference-judged': differenceJudged,
  'note-written': aboutKnownIfAny,
  'time-clocked': aboutKnownIfAny,
  'advice-declined': aboutKnown,
  correction: (context, event) => correctionSound(context, event.body.corrects, (restored) => checkEvent(context, restored)),
  'demo-put-away': () => null,
};

/**
 * Why an event may not be added to the log as the state stands, or null when it may. Events of kinds that this version
 * does not know are taken as they are.
 */
export function checkEvent(context: RuleContext, event: AnyEvent): Objection | null {
  if (isForeign(event)) return null;
  const rule = RULES[event.kind] as (context: RuleContext, event: BenchEvent) => Objection | null;
  return rule(context, event);
}
