import type { Assembly, PileItem } from '../../core/planning/index.ts';
import type { Judged } from '../advice/beliefs.ts';
import type { Desk } from '../advice/desk.ts';
import { heldBy } from '../advice/held.ts';
import { cureOf, tellingOf, type Telling } from '../advice/knowing.ts';
import { forPartsMinor, pricesOf } from '../advice/prices.ts';
import { openingMinutes } from '../advice/road-option.ts';
import { nothingWrong } from '../advice/well-chance.ts';
import { workshopFor, type Workshop } from '../advice/workshop.ts';
import type { Stage } from '../events/index.ts';
import { postageOf } from '../market/postage-of.ts';
import { slotContent } from '../slots.ts';
import type { Item } from '../state.ts';
import { faultClasses } from './fault-classes.ts';
import { planSlots, type PlanSlot } from './plan-slots.ts';
import { slotRemedies, type Stakes, type Step } from './slot-remedies.ts';

/** A unit that is likelier well than this is not opened to be finished. */
const LIKELY_WELL = 0.5;
const NOTHING_TOLD: Telling = { bitsPerMinute: 0, bits: 0, minutes: 0 };

/** A unit as the plan sees it: each of its slots with what may be wrong there and what may be done. */
export function planUnit(desk: Desk, item: Item, judged: Judged): PileItem {
  const { state } = desk;
  const model = judged.model;
  const { decision, workshop } = desk.weighJudged(item, judged, new Map());
  const asIsWell = nothingWrong(judged.belief) >= LIKELY_WELL;
  const openMinutes = asIsWell ? 0 : openingMinutes(model, item.stage, 'open');
  const stage: Stage = asIsWell || item.stage !== 'closed' ? item.stage : 'open';
  const telling = item.status === 'bought' || item.status === 'on-the-bench' ? tellingOf(decision.checks) : NOTHING_TOLD;
  const held = planSlots(model.file).filter(({ id }) => slotContent(item, id, state.items, model).holds !== 'nothing');
  return {
    id: item.id,
    model: item.modelId,
    whole: { asIsMinor: forPartsMinor(decision.prices, heldBy(item, model, state.items)), openMinutes },
    assemblies: held.map((slot) =>
      planAssembly({ judged, workshop, slot, stage, telling, stakes: decision.stakes, unproved: decision.unproved.length > 0 }),
    ),
  };
}

/** An assembly that lies in the drawer; what is around it counts as well. */
export function planLoose(desk: Desk, item: Item, judged: Judged): PileItem {
  const { settings } = desk.state;
  const prices = pricesOf(judged.model, settings, null, postageOf(desk.state, judged.model));
  const stakes = { workingMinor: prices.workingMinor, asIsMinor: 0, hourMinor: settings.hourValueMinor };
  const slot = planSlots(judged.model.file).find(({ id }) => id === item.slot);
  const workshop = workshopFor(item, judged, desk.parts, new Map(), desk.memories.workshops);
  const setting = { judged, workshop, stage: 'board-out' as const, telling: NOTHING_TOLD, stakes, unproved: false };
  return { id: item.id, model: judged.model.file.id, assemblies: slot ? [planAssembly({ ...setting, slot })] : [] };
}

interface AssemblySetting {
  readonly judged: Judged;
  readonly workshop: Workshop;
  readonly slot: PlanSlot;
  /** How far it is opened when the work begins. */
  readonly stage: Stage;
  readonly telling: Telling;
  readonly stakes: Stakes;
  /** A step of proof failed for good: nothing more is tried. */
  readonly unproved: boolean;
}

function planAssembly({ judged, workshop, slot, stage, telling, stakes, unproved }: AssemblySetting): Assembly {
  const classes = faultClasses(judged, slot.blocks);
  const faults = Object.fromEntries(classes.map(({ id, chance }) => [id, chance]));
  if (unproved) return { slot: slot.id, faults, remedies: [] };
  return { slot: slot.id, faults, remedies: slotRemedies(classes, stepsOf(judged, workshop, stage), stakes, telling) };
}

/** The remedies that are possible at this bench now; parts that they name are taken from the drawer or ordered. */
function stepsOf({ model }: Judged, { alone }: Workshop, stage: Stage): Step[] {
  return alone.remedies.map((remedy) => {
    const parts = model.file.remedies.find(({ id }) => id === remedy.id)?.parts ?? [];
    const uses = Object.fromEntries(parts.map(({ part, count }) => [part, count]));
    const cure = cureOf(model, remedy, { workingMinor: 0, asIsMinor: 0, hourMinor: 0, openingMinutes: { open: 0, 'board-out': 0 }, stage });
    return parts.length > 0 ? { cure: { ...cure, partsMinor: 0 }, uses, boughtMinor: cure.partsMinor } : { cure, uses, boughtMinor: 0 };
  });
}
