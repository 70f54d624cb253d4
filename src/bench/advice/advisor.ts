import type { Refusal } from '../bench.ts';
import type { Boards } from '../boards/board-knowledge.ts';
import { modelKey } from '../grow/model-key.ts';
import { learner } from '../learning/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import type { PartWant } from '../stock/low-stock.ts';
import type { ItemRow, OutlookView, PileView, ProofView, ScoutQuestion, SellerQuestions, WatchView } from '../views/index.ts';
import { AdviceError } from './advice-error.ts';
import { worksChance } from './beliefs.ts';
import { KnownBoards } from './board/known-boards.ts';
import { Desk, type Memories } from './desk.ts';
import { filePartsOf, type FileParts } from './file-parts.ts';
import { foresightOf, type Foresight } from './foresight.ts';
import { Memo } from './memo.ts';
import { outlookOf } from './outlook.ts';
import { partWants } from './part-wants.ts';
import { pileView } from './pile.ts';
import { proofOf } from './proof.ts';
import { sellerQuestions } from './seller-questions.ts';
import { watchView } from './watch.ts';

/** Turns what was recorded into what to think and do. Every answer is a function of the state and the models. */
export interface Advisor {
  fileParts(state: Readonly<BenchState>, itemId: string): FileParts;
  proofSteps(state: Readonly<BenchState>, itemId: string): ProofView;
  pile(state: Readonly<BenchState>, rowOf: (item: Item) => ItemRow): PileView;
  /** Chance that an assembly, or a unit, is well in all its blocks; 0 when its model is not here. */
  worksChance(state: Readonly<BenchState>, itemId: string): number;
  /** What is expected of an item before it is tried, worked on or decided upon; null when its model is not here. */
  foresight(state: Readonly<BenchState>, itemId: string): Foresight | null;
  outlook(state: Readonly<BenchState>, question: ScoutQuestion): OutlookView | Refusal;
  sellerQuestions(state: Readonly<BenchState>, question: ScoutQuestion): SellerQuestions | Refusal;
  watch(state: Readonly<BenchState>): WatchView;
  /** The bench laid out for judging, for what goes on from there. */
  desk(state: Readonly<BenchState>): Desk;
  /** The parts that mending takes, for the units that a plan of the pile opens; without one for those that are best mended by themselves. */
  partWants(state: Readonly<BenchState>, opened: ReadonlySet<string> | null): readonly PartWant[];
}

/** A belief holds hundreds of sets of faults; the other answers are small. */
const MOST_BELIEFS = 400;
const MOST_ANSWERS = 2000;

/** A belief through a circuit holds some ten thousand numbers. */
const MOST_BOARD_BELIEFS = 120;
const MOST_BOARD_MODELS = 12;

/** Throws `AdviceError` when asked of an item that the state does not hold. `models` are as they ship: what this bench has learned is worked in here, for all advice. `boards` tells of circuits; without it all goes by the model files. */
export function createAdvisor(models: ReadonlyMap<string, Model>, boards?: Boards): Advisor {
  const memories: Memories = {
    beliefs: new Memo(MOST_BELIEFS),
    workshops: new Memo(MOST_BELIEFS),
    decisions: new Memo(MOST_ANSWERS),
    checks: new Memo(MOST_BELIEFS),
    remedies: new Memo(MOST_ANSWERS),
    boardBeliefs: new Memo(MOST_BOARD_BELIEFS),
  };
  const learn = learner(models);
  const known = new KnownBoards(boards, new Memo(MOST_BOARD_MODELS));
  let latest: { readonly desk: Desk; readonly seq: number; readonly stamp: string } | null = null;
  const deskOf = (state: Readonly<BenchState>): Desk => {
    const stamp = known.stamp();
    if (latest?.desk.state !== state || latest.seq !== state.seq || latest.stamp !== stamp)
      latest = { desk: new Desk(state, learn(state), memories, known), seq: state.seq, stamp };
    return latest.desk;
  };
  return {
    fileParts: (state, itemId) => filePartsOf(deskOf(state), itemOf(state, itemId)),
    proofSteps: (state, itemId) => {
      const item = itemOf(state, itemId);
      return proofOf(item, deskOf(state).models.get(modelKey(item)) ?? null);
    },
    pile: (state, rowOf) => pileView(deskOf(state), rowOf),
    worksChance: (state, itemId) => {
      const judged = deskOf(state).beliefs.of(itemOf(state, itemId));
      return judged ? worksChance(judged) : 0;
    },
    foresight: (state, itemId) => foresightOf(deskOf(state), itemOf(state, itemId)),
    outlook: (state, question) => outlookOf(deskOf(state), question),
    sellerQuestions: (state, question) => sellerQuestions(deskOf(state), question),
    watch: (state) => watchView(deskOf(state)),
    desk: deskOf,
    partWants: (state, opened) => partWants(deskOf(state), opened),
  };
}

function itemOf(state: Readonly<BenchState>, itemId: string): Item {
  const item = state.items.get(itemId);
  if (!item) throw new AdviceError('no-such-item', `no item is called "${itemId}"`);
  return item;
}
