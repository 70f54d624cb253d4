import type { LotState, Override } from '../../core/planning/index.ts';
import type { Desk } from '../advice/desk.ts';
import { Memo } from '../advice/memo.ts';
import type { PlanWorker } from '../ports.ts';
import type { BenchState } from '../state.ts';
import type { Refusal } from '../bench.ts';
import type { ChoiceQuestion, CompareQuestion, CompareView, LotQuestion, LotView, PlanView } from '../views/index.ts';
import type { WeighLot } from './jobs.ts';
import { compareListings } from './compare-listings.ts';
import { lotWorth, type PlanInHand } from './lot-worth.ts';
import { pileOf, type PlannedPile } from './pile-of.ts';
import { Planner, type Made, type PlanStanding } from './planner.ts';
import { planView } from './plan-view.ts';

/** The plan of one bench: how it stands, what a choice would cost. */
export interface PlanRoom {
  /** How the plan stands; a new one is begun where the pile has changed. */
  view(desk: Desk): PlanView;
  /** The last one as it was made, without a look at the pile, which may take a second. */
  last(): PlanStanding;
  /** The same, once nothing is being made any more. */
  settled(desk: Desk): Promise<PlanView>;
  /** What a choice would cost by the plan as it stands, minor units; null where there is no plan, or the choice is not one. */
  regret(desk: Desk, question: ChoiceQuestion): Promise<number | null>;
  /** What a lot is worth to the pile as it is planned. */
  lot(desk: Desk, question: LotQuestion): Promise<LotView | Refusal>;
  /** Listings side by side, most profit per hour first. */
  compare(desk: Desk, question: CompareQuestion): Promise<CompareView | Refusal>;
  /** The plan as it stands once nothing is being made; null where there is none. */
  made(desk: Desk): Promise<Made | null>;
  readonly worker: PlanWorker;
}

/** Lots whose states are remembered: another price asks nothing of the plan. */
const MOST_LOTS = 20;

export function openPlanRoom(worker: PlanWorker, log: (sentence: string, detail: unknown) => void): PlanRoom {
  const planner = new Planner(worker, log);
  const lots = new Memo<Promise<readonly LotState[]>>(MOST_LOTS);
  const remembered = (job: WeighLot): Promise<readonly LotState[]> => lots.get(JSON.stringify(job), () => worker.run(job));
  let latest: { readonly desk: Desk; readonly pile: PlannedPile } | null = null;
  const pileAt = (desk: Desk): PlannedPile => {
    if (latest?.desk !== desk) latest = { desk, pile: pileOf(desk) };
    return latest.pile;
  };
  const look = (desk: Desk) => planner.look(pileAt(desk), desk.state.seq, (since) => touchedSince(desk.state, since));
  const made = async (desk: Desk): Promise<Made | null> => {
    look(desk);
    await planner.settled();
    return look(desk).made;
  };
  /** The plan as it stands, the one before while another is being made. */
  const inHand = async (desk: Desk): Promise<PlanInHand> => {
    const standing = look(desk).made ?? (await made(desk));
    return { from: standing?.from ?? pileAt(desk), plan: standing?.plan ?? { items: [], fits: [] } };
  };
  return {
    worker,
    view: (desk) => planView(desk.state, desk.models, look(desk)),
    last: () => planner.last(),
    settled: async (desk) => {
      await made(desk);
      return planView(desk.state, desk.models, look(desk));
    },
    made,
    lot: async (desk, question) => lotWorth(desk, remembered, await inHand(desk), question),
    compare: async (desk, { listings }) => compareListings(desk, worker, await inHand(desk), listings),
    regret: async (desk, question) => {
      const standing = look(desk).made ?? (await made(desk));
      const choice = choiceOf(question);
      if (!standing?.plan || !choice || !isThere(standing, choice)) return null;
      return worker.run({ kind: 'regret', pile: standing.from.pile, plan: standing.plan, choice });
    },
  };
}

const touchedSince = ({ items }: Readonly<BenchState>, since: number): ReadonlySet<string> =>
  new Set([...items.values()].filter(({ changedSeq }) => changedSeq > since).map(({ id }) => id));

function choiceOf({ item_id: item, does, slot, remedy }: ChoiceQuestion): Override | { keep: string } | null {
  if (does === 'keep') return { keep: item };
  if (does !== undefined) return { item, does };
  return slot === undefined || remedy === undefined ? null : { item, slot, remedy };
}

function isThere({ from }: Made, choice: Override | { keep: string }): boolean {
  if ('keep' in choice) return from.pile.items.some(({ id }) => id === choice.keep);
  const item = from.pile.items.find(({ id, keep }) => id === choice.item && !keep);
  if (!item || 'does' in choice) return item?.whole !== undefined;
  const assembly = item.assemblies.find(({ slot }) => slot === choice.slot);
  return assembly !== undefined && (choice.remedy === null || assembly.remedies.some(({ id }) => id === choice.remedy));
}
