import { nextChecks, rankRemedies, type Belief, type RankedCheck, type RankedRemedy } from '../../core/diagnosis/index.ts';
import type { Stakes } from '../../core/diagnosis/model.ts';
import type { Honesty, KnownHere } from '../learning/index.ts';
import type { Model } from '../models/index.ts';
import type { BoardBelief } from '../../core/diagnosis/board/index.ts';
import type { BenchState, Item } from '../state.ts';
import type { AdviceView } from '../views/index.ts';
import { adviceId } from './advice-id.ts';
import { Beliefs, type Judged } from './beliefs.ts';
import { benchAfter, rankOnBoard } from './board/rank-on-board.ts';
import type { KnownBoards } from './board/known-boards.ts';
import { beyondMending } from './beyond-mending.ts';
import { decide, type Decision } from './decision.ts';
import { Donors, slotTrouble, type Donor } from './donors.ts';
import { partsAtHand, type PartStock } from './drawer-parts.ts';

import { postageOf } from '../market/postage-of.ts';
import { lifeOf } from './life.ts';
import type { Memo } from './memo.ts';
import { chooseNext, nextThing, type Thinking } from './next-thing.ts';
import { pricesOf } from './prices.ts';
import { proofOf } from './proof.ts';
import { workshopFor, type Workshop } from './workshop.ts';

/** What is remembered from one state of the bench to the next; each by all that it depends on. */
export interface Memories {
  readonly beliefs: Memo<Belief>;
  readonly workshops: Memo<Workshop>;
  readonly decisions: Memo<Decision>;
  readonly checks: Memo<readonly RankedCheck[]>;
  readonly remedies: Memo<readonly RankedRemedy[]>;
  readonly boardBeliefs: Memo<BoardBelief>;
}

/** One unit, decided upon. */
export interface Weighed {
  readonly item: Item;
  readonly judged: Judged;
  readonly decision: Decision;
  readonly workshop: Workshop;
  readonly donors: ReadonlyMap<string, readonly Donor[]>;
  readonly key: string;
}

/** A slot less likely than this to be in trouble needs no donor. */
const WORTH_A_DONOR = 0.15;
const NO_DONORS: ReadonlyMap<string, readonly Donor[]> = new Map();
const NOTHING: ReadonlySet<string> = new Set();

/** One state of the bench laid out for judging: what sellers, drawer and other units say about each unit. */
export class Desk {
  /** As they are known at this bench. */
  readonly models: ReadonlyMap<string, Model>;
  readonly honesty: Honesty;
  readonly beliefs: Beliefs;
  readonly parts: ReadonlyMap<string, PartStock>;
  readonly #donors: Donors;
  readonly #hopeless = new Map<string, boolean>();

  constructor(
    readonly state: Readonly<BenchState>,
    known: KnownHere,
    readonly memories: Memories,
    readonly boards: KnownBoards,
  ) {
    this.models = known.models;
    this.honesty = known.honesty;
    this.beliefs = new Beliefs(state, known.models, this.honesty, memories.beliefs, boards, memories.boardBeliefs);
    this.parts = partsAtHand(state);
    this.#donors = new Donors(this.beliefs, (unit) => this.#isHopeless(unit));
  }

  /** The four roads of a unit; `taken` are donors that others have. Null when its model is not here. */
  weigh(item: Item, taken: ReadonlySet<string> = NOTHING): Weighed | null {
    const judged = this.beliefs.of(item);
    return judged && this.weighJudged(item, judged, this.donorsFor(item, judged, taken));
  }

  weighJudged(item: Item, judged: Judged, donors: ReadonlyMap<string, readonly Donor[]>): Weighed {
    const workshop = workshopFor(item, judged, this.parts, donors, this.memories.workshops);
    const prices = pricesOf(judged.model, this.state.settings, item.asking?.priceMinor ?? null, postageOf(this.state, judged.model));
    const asFiled = judged.board?.known.plain ?? judged.model;
    const unproved = beyondMending(item, lifeOf(item, this.state.items), asFiled, proofOf(item, judged.model));
    const key = this.#keyOf(item, judged, workshop, donors, JSON.stringify([prices, unproved]));
    const rank = (stakes: Stakes): readonly RankedCheck[] => this.#rank(item, judged, workshop, stakes);
    const setting = { item, judged, beliefs: this.beliefs, workshop, donors, prices, unproved, rank };
    return { item, judged, workshop, donors, key, decision: this.memories.decisions.get(key, () => decide(setting)) };
  }

  /** For each slot in doubt, where another assembly can come from. */
  donorsFor(item: Item, judged: Judged, taken: ReadonlySet<string>): ReadonlyMap<string, readonly Donor[]> {
    const { model } = judged;
    const doubtful = model.file.slots.filter((slot) => slotTrouble(judged, slot.id) > WORTH_A_DONOR);
    if (doubtful.length === 0) return NO_DONORS;
    const except = new Set([...taken, item.id]);
    const found = doubtful.map((slot) => [slot.id, this.#donors.for(model, slot.id, except)] as const);
    return new Map(found.filter(([, donors]) => donors.length > 0));
  }

  /** The one next thing for a unit under work. */
  advise(weighed: Weighed): AdviceView {
    return nextThing(this.#thinking(weighed));
  }

  /** The same in short: what to do, and its headline. */
  adviseInShort(weighed: Weighed): Pick<AdviceView, 'do' | 'headline'> {
    return chooseNext(this.#thinking(weighed));
  }

  #thinking(weighed: Weighed): Thinking {
    const { item, judged, decision, workshop, donors, key } = weighed;
    const { remedies } = this.memories;
    return {
      item,
      life: lifeOf(item, this.state.items),
      standing: judged.board && benchAfter(lifeOf(item, this.state.items), judged.board),
      judged,
      decision,
      remedies: () => remedies.get(key, () => rankRemedies(workshop.device, judged.belief, decision.stakes)),
      proof: proofOf(item, judged.model),
      bench: { parts: this.parts, donors, currency: this.state.settings.currency },
    };
  }

  /** Checks of a unit under work; for others there is nothing to find out. What other assemblies could do is not looked at. */
  #rank(item: Item, judged: Judged, { alone }: Workshop, stakes: Stakes): readonly RankedCheck[] {
    if (item.status !== 'bought' && item.status !== 'on-the-bench') return [];
    const skip = new Set(alone.checks.map(({ id }) => id).filter((id) => item.declined.has(adviceId('check', id))));
    const remedies = alone.remedies.map((remedy) => [remedy.id, remedy.partsCostMinor]);
    const { board, belief, evidence } = judged;
    const bench = board && benchAfter(lifeOf(item, this.state.items), board);
    const key = JSON.stringify([judged.key, remedies, [...skip], stakes, bench]);
    return this.memories.checks.get(key, () =>
      board && bench ? rankOnBoard(board, alone, evidence, stakes, skip, bench) : nextChecks(alone, belief, evidence, stakes, { skip }),
    );
  }

  /** Taken alone, a unit is a donor when parting it out or leaving it beats mending it. */
  #isHopeless(unit: Item): boolean {
    const known = this.#hopeless.get(unit.id);
    if (known !== undefined) return known;
    const judged = this.beliefs.of(unit);
    const best = judged && this.weighJudged(unit, judged, NO_DONORS).decision.weighed.best;
    const hopeless = best === 'part-out' || best === 'leave';
    this.#hopeless.set(unit.id, hopeless);
    return hopeless;
  }

  #keyOf(item: Item, judged: Judged, workshop: Workshop, donors: ReadonlyMap<string, readonly Donor[]>, rest: string): string {
    const slots = [...item.slots].map(([slot, inside]) => [slot, inside !== null]);
    return JSON.stringify([judged.key, item.status, item.stage, slots, [...item.declined], workshop.key, [...donors], rest]);
  }
}
