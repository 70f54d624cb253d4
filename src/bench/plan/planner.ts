import { comparePlans, type Pile, type PileItem, type PilePlan, type PlanChanges } from '../../core/planning/index.ts';
import type { PlanWorker } from '../ports.ts';
import type { MadePlan } from './jobs.ts';
import type { PlannedPile } from './pile-of.ts';

/** How the plan stands: the latest one, what it was made from, and whether another is on its way. */
export interface PlanStanding {
  readonly stage: 'nothing' | 'making' | 'ready' | 'failed';
  readonly made: Made | null;
  /** What is different from the plan before, where something is. */
  readonly changes: PlanChanges | null;
}

export interface Made extends MadePlan {
  readonly from: PlannedPile;
  readonly seq: number;
}

/** Putting down one piece of work and taking up another takes so long. Common practice, no source. */
const SWITCH_MINUTES = 10;
const SEED = 'plan';
/** With more than this share of new things the pile is planned from nothing. */
const MANY_NEW = 0.25;

/** Keeps the plan of one bench up to date, one job at a time, the newest pile next. */
export class Planner {
  #made: Made | null = null;
  #changes: PlanChanges | null = null;
  #key = '';
  #failed = false;
  #wanted: { readonly from: PlannedPile; readonly seq: number; readonly touched: (since: number) => ReadonlySet<string> } | null = null;
  #working: Promise<void> | null = null;

  constructor(
    private readonly worker: PlanWorker,
    private readonly log: (sentence: string, detail: unknown) => void,
  ) {}

  /** Begins a new plan where the pile is not the one that was planned; `touched` names the items that events after a seq were about. */
  look(from: PlannedPile, seq: number, touched: (since: number) => ReadonlySet<string>): PlanStanding {
    const key = JSON.stringify([from.pile, from.overrides]);
    if (key !== this.#key) {
      this.#key = key;
      this.#wanted = { from, seq, touched };
      this.#working ??= this.#workOff().finally(() => (this.#working = null));
    }
    return this.#standing(from);
  }

  /** How the plan stands, without a look at the pile. */
  last(): PlanStanding {
    const stage = this.#failed ? 'failed' : this.#working || !this.#made ? 'making' : 'ready';
    return { stage, made: this.#made, changes: this.#changes };
  }

  /** Waits until nothing is being made. */
  async settled(): Promise<void> {
    while (this.#working) await this.#working;
  }

  #standing(from: PlannedPile): PlanStanding {
    if (from.pile.items.length === 0) return { stage: 'nothing', made: null, changes: null };
    return { stage: this.#working ? 'making' : this.#failed ? 'failed' : 'ready', made: this.#made, changes: this.#changes };
  }

  async #workOff(): Promise<void> {
    while (this.#wanted) {
      const { from, seq, touched } = this.#wanted;
      this.#wanted = null;
      if (from.pile.items.length === 0) continue;
      await this.#make(from, seq, touched).then(
        () => (this.#failed = false),
        (error: unknown) => {
          this.#failed = true;
          this.log('The pile could not be planned; the advice unit by unit stands.', error);
        },
      );
    }
  }

  async #make(from: PlannedPile, seq: number, touched: (since: number) => ReadonlySet<string>): Promise<void> {
    const before = this.#made;
    const last = before?.plan && !muchIsNew(before.plan, from.pile) ? before.plan : null;
    const pile = last ? withStarted(from, last) : from.pile;
    const made = await this.worker.run({ kind: 'make', pile, overrides: from.overrides, seed: SEED, last });
    if (made.broken.length > 0) this.log('A plan broke its laws and is not shown.', made.broken);
    this.#made = { ...made, from: { ...from, pile }, seq };
    if (!before?.plan || !made.plan) return;
    const changes = comparePlans(before.plan, made.plan, touched(before.seq));
    this.#changes = changes.items.length + changes.orders.length > 0 ? changes : null;
  }
}

function muchIsNew({ items }: PilePlan, pile: Pile): boolean {
  const known = new Set(items.map(({ item }) => item));
  return pile.items.filter(({ id }) => !known.has(id)).length > MANY_NEW * pile.items.length;
}

/** What the last plan does with a unit that lies open is work begun: to do something else has to pay for the switch. */
function withStarted({ pile, inHand }: PlannedPile, { items }: PilePlan): Pile {
  const switchMinor = (SWITCH_MINUTES / 60) * pile.wishes.hourMinor;
  const lastOf = new Map(items.map(({ item, remedies }) => [item, remedies]));
  const started = (item: PileItem): PileItem => ({
    ...item,
    assemblies: item.assemblies.map((assembly) => {
      const remedy = lastOf.get(item.id)?.[assembly.slot];
      const stillThere = remedy !== undefined && assembly.remedies.some(({ id }) => id === remedy);
      return stillThere ? { ...assembly, started: { remedy, switchMinor } } : assembly;
    }),
  });
  return { ...pile, items: pile.items.map((item) => (inHand.has(item.id) ? started(item) : item)) };
}
