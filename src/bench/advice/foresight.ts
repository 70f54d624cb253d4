import { answersSinceChange, outcomesOf, rankRemedies } from '../../core/diagnosis/index.ts';
import type { Stakes } from '../../core/diagnosis/model.ts';
import { meanOf } from '../../core/planning/index.ts';
import type { Item } from '../state.ts';
import type { Road } from '../views/index.ts';
import type { Judged } from './beliefs.ts';
import type { Desk } from './desk.ts';
import { nothingWrong } from './well-chance.ts';

/** What the best road of a unit is expected to lead to, from here on. */
export interface Expected {
  readonly road: Road;
  /** Chance that it ends as a working unit. */
  readonly chance: number;
  /** Less minutes and what is spent; minor units. */
  readonly valueMinor: number;
  readonly minutes: number;
  readonly spendMinor: number;
}

/** Expectations that can be held against what then happens. */
export interface Foresight {
  /** Chance that a function works when it is tried without accessories; null for one that the model does not know. */
  works(functionId: string): number | null;
  /** Chance that the unit works after a remedy; null for one that the model does not know. */
  mended(remedyId: string): number | null;
  /** Null of an assembly. */
  end(): Expected | null;
}

export function foresightOf(desk: Desk, item: Item): Foresight | null {
  const judged = desk.beliefs.of(item);
  if (!judged) return null;
  return {
    works: (functionId) => worksWhenTried(judged, functionId),
    mended: (remedyId) => worksAfter(judged, remedyId),
    end: () => (item.kind === 'unit' ? expectedOf(desk, item, judged) : null),
  };
}

function worksWhenTried({ device, belief, evidence }: Judged, functionId: string): number | null {
  if (!device.functions.some(({ id }) => id === functionId)) return null;
  const check = { id: functionId, kind: 'try', function: functionId, with: [], minutes: 1, stage: 'closed' } as const;
  const outcomes = outcomesOf(device, belief, check, answersSinceChange(evidence)(check));
  return outcomes.find(({ outcome }) => outcome === 'works')?.chance ?? 0;
}

/** For the chances alone, which do not hang on money. */
const NO_STAKES: Stakes = { workingMinor: 0, asIsMinor: 0, hourMinor: 0, openingMinutes: { open: 0, 'board-out': 0 }, stage: 'closed' };

/** A remedy that helps against nothing believed in leaves it as it is. */
function worksAfter({ device, belief }: Judged, remedyId: string): number | null {
  const remedy = device.remedies.find(({ id }) => id === remedyId);
  if (!remedy) return null;
  const ranked = rankRemedies({ ...device, remedies: [remedy] }, belief, NO_STAKES)[0];
  return ranked?.chance ?? (1 - remedy.risk) * nothingWrong(belief);
}

function expectedOf(desk: Desk, item: Item, judged: Judged): Expected {
  const { decision } = desk.weighJudged(item, judged, desk.donorsFor(item, judged, new Set()));
  const option = decision.options.find(({ road }) => road === decision.weighed.best)!;
  const { road, chance, minutes, spendMinor } = option;
  return { road, chance: Math.min(1, Math.max(0, chance)), valueMinor: meanOf(option.outcomes), minutes, spendMinor };
}
