import type {
  BenchEvent,
  BoardCorners,
  BoardSide,
  Body,
  Claim,
  FindingKind,
  ForeignEvent,
  ItemKind,
  Judgement,
  LandPattern,
  Outcome,
  Region,
  Stage,
  TestName,
  TestValue,
  TestVerdict,
} from './events/index.ts';
import type { GrownModel } from './grow/grown-model.ts';
import type { Status } from './views/rows.ts';

/** Everything that is known after folding the log. Plain data: two equal logs give two equal states. */
export interface BenchState {
  /** seq of the last event folded. */
  seq: number;
  settings: Settings;
  lots: Map<string, Lot>;
  items: Map<string, Item>;
  bags: Map<string, Bag>;
  orders: Map<string, Order>;
  listings: Map<string, Listing>;
  /** Models that grow here, by id. */
  grown: Map<string, GrownModel>;
  /** Older versions of them that things were judged with, by `versionKey`. */
  grownThen: Map<string, GrownModel>;
  /** Sales of others that were written down, by id. */
  sightings: Map<string, Sighting>;
  /** Fee tables in the order of the log. */
  fees: FeeRow[];
  /** Tables of postage in the order of the log. */
  postage: PostageRow[];
  /** Rules of tax as they were chosen, in the order of the log. */
  taxRules: Body<'tax-rule-set'>[];
  /** Own words of a listing, with places for facts. */
  saleText: string;
  learning: {
    /** Null: jobs do not fade. */
    halfLifeDays: number | null;
    /** Time of the last reset by learned number. */
    resets: Map<string, string>;
    /** What other benches have learned, in the order in which it was taken in. */
    takenIn: (Body<'learned-taken-in'> & { readonly eventId: string; readonly at: string })[];
  };
  planning: Planning;
  /** Words that the person taught for reading listings, by the words in small letters. */
  taughtWords: Map<string, { words: string; claim: Claim }>;
  pictures: {
    /** Photos of known-good boards that were chosen or put aside, by model; in the order of the log. */
    references: Map<string, PictureReference[]>;
    /** What was said of differences, in the order of the log. */
    judged: JudgedDifference[];
  };
  /** Time of the newest event that counts; empty before the first. */
  newestAt: string;
  /** Double-entry lines, oldest first; each event's lines sum to zero. */
  journal: JournalLine[];
  /** Kept from a newer version and not understood here. */
  foreign: ForeignEvent[];
  /** Events that were corrected, by id, with the correction. */
  corrected: Map<string, string>;
  /** Events that name something unknown here, so that they could not be folded: kept and shown. */
  orphans: Orphan[];
  /** Names of things that left with the demo, or that hung on such things: what speaks of them is an orphan without fuss. */
  putAway: Set<string>;
  /** Time clocked on no item, minutes. */
  looseMinutes: number;
  nextNumber: number;
  /** Stock numbers by item id. A number once given is never given again, even if what gave it was undone. */
  numbers: Map<string, number>;
  demo: 'none' | 'present' | 'put-away';
}

/** A photo of a known-good board of a model. */
export interface PictureReference {
  side: BoardSide;
  /** By its hash, or `shipped` for that of the model itself. */
  photo: string;
  use: boolean;
  corners: BoardCorners | null;
  eventId: string;
}

/** What the person said of a difference between photos. */
export type JudgedDifference = Body<'difference-judged'> & { eventId: string; modelId: string };

export interface Orphan {
  eventId: string;
  kind: string;
  /** What it would have needed, as a clause: "item tern-7". */
  missing: string;
  /** True when what it needed was put away with the demo. */
  demo: boolean;
}

export interface Settings {
  name: string;
  currency: string;
  hourValueMinor: number;
  feePercent: number;
  postageOutMinor: number;
}

/** What the person wants of the plan, as far as it was said. */
export interface Planning {
  wishes: Body<'plan-set'>;
  suppliers: Map<string, Supplier>;
  /** What the person decided otherwise, by item, in the order of the log. */
  choices: Map<string, PlanChoice[]>;
}

/** A supplier as it was typed in, money in the bench's currency. */
export interface Supplier {
  name: string;
  postageMinor: number;
  days: number;
  offers: { part: string; unitMinor: number; least: number }[];
}

export interface PlanChoice {
  eventId: string;
  does: 'open' | 'as-is' | 'keep' | null;
  /** Of a choice of a remedy; empty otherwise. */
  slot: string;
  remedy: string | null;
  regretMinor: number | null;
  reason: string;
}

export interface Lot {
  id: string;
  title: string;
  seller: string;
  listingId: string | null;
  boughtAt: string;
  /** Price, postage and tax together, in the bench's currency. */
  costMinor: number;
  /** What was paid to the seller for the things alone, in the bench's currency. */
  priceMinor: number;
  itemIds: string[];
  demo: boolean;
}

export interface Item {
  id: string;
  number: number;
  name: string;
  kind: ItemKind;
  modelId: string;
  /** Version of a grown model that it was judged with when it left; null: the newest counts, or the model does not grow here. */
  modelVersion: number | null;
  lotId: string | null;
  /** For an assembly: the slot that it is made for; empty for a unit. */
  slot: string;
  /** What it was expected to be worth when it was bought, in the bench's currency; null where that was not said. */
  expectedMinor: number | null;
  /** The item that it sits in; null when it stands alone. */
  inside: string | null;
  status: Status;
  receivedAt: string | null;
  stage: Stage;
  /** Steps of opening that are done and not put back, in order. */
  opened: string[];
  /** Minutes that steps of opening took on this item, oldest first. */
  stepTimes: { step: string; minutes: number }[];
  /** Fasteners that came out and went in again since it was last opened, by set. */
  fasteners: Map<string, { out: number; foreign: number; back: number }>;
  /** Slots whose own assembly has been taken out, and what is in there now (null is empty). Slots not named hold what came with the unit. */
  slots: Map<string, string | null>;
  history: HistoryEntry[];
  photos: { hash: string; side: string; caption: string; eventId: string }[];
  costs: CostPart[];
  minutes: number;
  proof: Map<string, { outcome: Body<'proof-step-done'>['outcome']; reason: string; eventId: string }>;
  /** What was measured, oldest first; `beforeWork`: work touched the unit after it. */
  tests: TestResult[];
  grade: { grade: string; scale: string; text: string; judged: Judgement[] } | null;
  asking: { priceMinor: number; place: string; at: string } | null;
  /** Every price that it was offered at, oldest first, and until when; null while it still is. */
  offers: { priceMinor: number; place: string; from: string; until: string | null; sold: boolean }[];
  sale: Sale | null;
  returns: number;
  declined: Map<string, string>;
  changedSeq: number;
  changedAt: string;
  demo: boolean;
}

/** A test that gave numbers. */
export interface TestResult {
  test: TestName;
  verdict: TestVerdict;
  text: string;
  values: TestValue[];
  knownGood: boolean;
  beforeWork: boolean;
  eventId: string;
  at: string;
}

export interface Sale {
  as: 'working' | 'for-parts';
  at: string;
  /** All in the bench's currency. */
  priceMinor: number;
  postageChargedMinor: number;
  feesMinor: number;
  postageMinor: number;
  costMinor: number;
  buyer: string;
}

/** A share of cost that the item carries, and where it came from. */
export interface CostPart {
  reason: 'lot' | 'part' | 'transplant-in' | 'transplant-out' | 'postage';
  amountMinor: number;
  eventId: string;
  text: string;
}

/** What bears on belief, in the order of the log; `proof` of no remedy touched since stays evidence too. */
export type HistoryEntry = { eventId: string; at: string } & (
  | { kind: 'claim'; claim: Claim; seller: string }
  | { kind: 'trial'; function: string; outcome: Outcome; with: string[] }
  | { kind: 'finding'; place: string; sees: FindingKind; region?: Region }
  | { kind: 'reading'; point: string; mode: string; value: number | null }
  | { kind: 'remedy'; remedy: string; place: string | null; outcome: Body<'remedy-done'>['outcome']; minutes: number }
  /** An assembly left (`came` null) or came; `from` is the state of its old home when it was taken out. */
  | { kind: 'slot'; slot: string; came: string | null; left: string | null }
  /** For an assembly: it was taken out of, or put into, a unit. */
  | { kind: 'moved'; from: string | null; to: string | null }
);

export interface Bag {
  id: string;
  part: string;
  name: string;
  place: string;
  count: number;
  /** First in, first out; the cost of a layer is for all that is left of it. */
  layers: { count: number; costMinor: number }[];
  /** Terminals of one of them, where they are known. */
  pattern: LandPattern | null;
  demo: boolean;
}

export interface Order {
  id: string;
  supplier: string;
  lines: Body<'order-placed'>['lines'];
  /** In the bench's currency. */
  costMinor: number;
  /** In the bench's currency: what of it is postage. */
  postageMinor: number;
  /** Of that, postage included, what each line carries, and how much of it has come. */
  lineCosts: { costMinor: number; cameMinor: number; came: number }[];
  placedAt: string;
  dueDay: string | null;
  /** When the last of it came. */
  arrivedAt: string | null;
  cancelledAt: string | null;
  /** Paid for what never came, and not paid back. */
  lostMinor: number;
  demo: boolean;
}

export interface Listing {
  id: string;
  body: Body<'listing-weighed'>;
  weighedAt: string;
  fate: 'open' | 'bought' | 'dropped';
  reason: string;
  demo: boolean;
}

/** A sale that someone else made, as it was seen. */
export interface Sighting {
  id: string;
  modelId: string;
  day: string;
  /** In the bench's currency. */
  priceMinor: number;
  condition: Body<'sale-seen'>['condition'];
  complete: number | null;
  original: number | null;
  text: string;
  eventId: string;
  demo: boolean;
}

/** What a place takes, from a day on; money in the bench's currency. */
export interface FeeRow {
  place: string;
  fromDay: string;
  bands: { upToMinor: number | null; percent: number }[];
  fixedMinor: number;
  capMinor: number | null;
}

/** What a parcel costs to send by its weight, from a day on; money in the bench's currency. */
export interface PostageRow {
  fromDay: string;
  bands: { upToG: number; priceMinor: number }[];
}

export interface JournalLine {
  eventId: string;
  at: string;
  account: Account;
  /** Debit positive, credit negative, in the bench's currency. */
  amountMinor: number;
  itemId: string | null;
}

export type Account =
  'cash' | 'stock' | 'parts' | 'on-order' | 'sales' | 'cost-of-sales' | 'fees' | 'postage-out' | 'refunds' | 'write-off' | 'own-use';

export type KnownEvent = BenchEvent;
