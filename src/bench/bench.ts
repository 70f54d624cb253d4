import type { Boards } from './boards/board-knowledge.ts';
import type { AnyEvent, ModelBundle, Stored } from './events/index.ts';
import type { Giver } from './grow/share-model.ts';
import type { EventStore, Clock, ItemPage, ItemQuery, PlanWorker } from './ports.ts';
import type { Model } from './models/index.ts';
import type { ReportView, StoryChoices, StoryView } from './report/index.ts';
import type { BenchState } from './state.ts';
import type { Period } from './tax/index.ts';
import type {
  AskingView,
  BenchView,
  BooksView,
  BreakdownView,
  CalibrationView,
  DrawerView,
  GrowthView,
  ItemFile,
  ItemHistory,
  LearnedBundle,
  LearnedView,
  ListingTextView,
  LotQuestion,
  LotView,
  MarketView,
  ModelCheckView,
  ModelRow,
  NetView,
  OpeningView,
  OutlookView,
  ChoiceQuestion,
  CompareQuestion,
  CompareView,
  PileView,
  PlanView,
  PointView,
  PooledPointView,
  ScoutQuestion,
  SellerQuestions,
  TaxView,
  WatchView,
} from './views/index.ts';

export interface BenchParts {
  readonly store: EventStore;
  readonly models: ReadonlyMap<string, Model>;
  /** What circuits say of boards; without it all advice goes by the model files. */
  readonly boards?: Boards;
  /** Works out plans of the whole pile; without it there are none. */
  readonly planning?: { readonly worker: PlanWorker; readonly log: (sentence: string, detail: unknown) => void };
  readonly clock: Clock;
  readonly device: string;
  readonly version: string;
}

/** Why an event was not taken; nothing of its batch was stored. */
export interface Refusal {
  readonly ok: false;
  readonly code: string;
  /** Which event of the batch, from 0. */
  readonly index: number;
  /** Where in it, such as `body.item_id`. */
  readonly field: string;
  /** What is wrong, as a clause. */
  readonly message: string;
}

export type RecordResult =
  { readonly ok: true; readonly stored: readonly { readonly id: string; readonly seq: number; readonly duplicate: boolean }[] } | Refusal;

/** The use-cases of the job. All reading first catches up with what other processes have appended. */
export interface Bench {
  /** Checks a batch against its schemas and the state, and stores all of it or nothing. */
  record(events: readonly unknown[]): RecordResult;
  /** Takes a log from elsewhere as it is, without the rules of the job; only ever into an empty bench. */
  adopt(events: readonly AnyEvent[]): RecordResult;
  state(): Readonly<BenchState>;
  overview(): BenchView;
  items(query: ItemQuery): ItemPage;
  /** By id, or by stock number such as "#7". */
  item(name: string): ItemFile | null;
  /** Of an item its row and log, without any thought; null when there is none. */
  history(name: string): ItemHistory | null;
  pile(): PileView;
  /** The plan of the whole pile as it stands; where the pile has changed a new one is begun, and this is the one before. */
  plan(): PlanView;
  /** The last plan that was made; looks at nothing and begins nothing. */
  planLast(): PlanView;
  /** The plan of the pile as it is now, once it is made. */
  planSettled(): Promise<PlanView>;
  /** What a choice of the person's would cost, minor units; null where there is no plan or no such choice. */
  regretOf(question: ChoiceQuestion): Promise<number | null>;
  drawer(): DrawerView;
  books(): BooksView;
  /** What the rules that the person has chosen say of a period, with the stock book. */
  tax(period: Period): TaxView;
  /** The books of a period as text files by name. */
  yearPack(period: Period): ReadonlyMap<string, string>;
  /** What was learned of remedies, faults and sellers, and from which jobs. */
  learned(): LearnedView;
  /** What was learned of a model from own jobs, to be given away; null when the model is not here. */
  sharedLearning(modelId: string): LearnedBundle | null;
  /** What was thought against what came. `shouldStop` ends the reckoning for this time, and the answer says how far it is; never by default. */
  calibration(shouldStop?: () => boolean): CalibrationView;
  /** Profit by model, seller and remedy, and estimates against outcomes. */
  breakdown(): BreakdownView;
  /** The text of a listing from what is on file of a unit; null when there is no such unit or its model is not here. */
  listingText(name: string): ListingTextView | null;
  /** The condition of a unit for whoever gets it; `urlOf` tells where the file of an item is opened. Null as `listingText`. */
  conditionReport(name: string, urlOf: (itemId: string) => string): ReportView | null;
  /** The story of a unit for friends; null as `listingText`. */
  story(name: string, choices: StoryChoices): StoryView | null;
  watch(): WatchView;
  outlook(question: ScoutQuestion): OutlookView | Refusal;
  /** What a lot is worth to the pile, and the most to pay; null where this bench makes no plans. */
  lot(question: LotQuestion): Promise<LotView | Refusal | null>;
  /** Listings side by side by what each would add to the pile; null where this bench makes no plans. */
  compare(question: CompareQuestion): Promise<CompareView | Refusal | null>;
  /** What to ask the seller, most worth first. */
  sellerQuestions(question: ScoutQuestion): SellerQuestions | Refusal;
  /** What is known of the market of a model; null when there is no such model. */
  market(modelId: string): MarketView | null;
  /** What to ask for an item, and whether to take a bid (minor units, null asks nothing); null when there is no such unit or its model is not here. */
  asking(name: string, bidMinor: number | null): AskingView | null;
  /** How to open an item to a goal such as "slot:display", or to close it, from where it stands; null when there is no such item or its model is not here. */
  opening(name: string, goal: string | null): OpeningView | null;
  models(): readonly ModelRow[];
  model(id: string): Model | null;
  /** A model that grows here as a bundle to be given away; null when no model that grows here is called so. */
  modelBundle(modelId: string, giver: Giver): ModelBundle | null;
  /** How a model grew here (null for one of the folder), and what its known-good boards show; null when the model is not here. */
  growth(modelId: string): { readonly growth: GrowthView | null; readonly points: PooledPointView[] } | null;
  /** Where boards of a model can be measured; null when the model is not here. */
  points(modelId: string): readonly PointView[] | null;
  /** What the nets of a board carry at most; null when the model is not here. */
  nets(modelId: string): readonly NetView[] | null;
  /** What a model can and cannot do now, and what in it cannot be true at once; null when the model is not here. `shouldStop` ends the search for mistakes. */
  checkModel(modelId: string, shouldStop: () => boolean): ModelCheckView | null;
  log(afterSeq: number, limit: number): readonly Stored[];
}

/** All answers of a bench that come from memory. What adds to its log, or reads the lists of its store, goes through a `BenchDoor`. */
export type BenchViews = Omit<Bench, 'record' | 'adopt' | 'items'>;

/** What of a bench may have to wait for a store that other processes share. */
export interface BenchDoor {
  /** Takes in what other processes have appended until now. */
  fresh(): Promise<void>;
  /** Resolves when nothing that this process does with the log is under way: a good moment for what takes long and can wait. */
  quiet(): Promise<void>;
  /** As `Bench.record`; resolves when all of it is lasting. */
  record(events: readonly unknown[]): Promise<RecordResult>;
  /** As `Bench.adopt`. */
  adopt(events: readonly AnyEvent[]): Promise<RecordResult>;
  items(query: ItemQuery): Promise<ItemPage>;
  /** The row and the log of an item, from the events about it alone; null when there is none. */
  history(name: string): Promise<ItemHistory | null>;
}
