import type { BenchState, Item } from '../state.ts';

/** The words with which a bench begins to offer things; the person sets their own. */
const SALE_TEXT = '{model}, condition {condition}.\n{works}\n{faults}\n{not_tested}\n{work}\n{replaced}\n{cell}';

/** The state of a bench on which nothing has happened. */
export const emptyState = (): BenchState => ({
  seq: 0,
  settings: { name: 'My bench', currency: 'GBP', hourValueMinor: 1000, feePercent: 12, postageOutMinor: 400 },
  lots: new Map(),
  items: new Map(),
  bags: new Map(),
  orders: new Map(),
  listings: new Map(),
  grown: new Map(),
  grownThen: new Map(),
  sightings: new Map(),
  fees: [],
  postage: [],
  taxRules: [],
  saleText: SALE_TEXT,
  learning: { halfLifeDays: 730, resets: new Map(), takenIn: [] },
  planning: { wishes: {}, suppliers: new Map(), choices: new Map() },
  taughtWords: new Map(),
  pictures: { references: new Map(), judged: [] },
  newestAt: '',
  journal: [],
  foreign: [],
  corrected: new Map(),
  orphans: [],
  putAway: new Set(),
  looseMinutes: 0,
  nextNumber: 1,
  numbers: new Map(),
  demo: 'none',
});

/** What differs from one new item to the next. */
export type NewItem = Pick<Item, 'id' | 'number' | 'name' | 'kind' | 'modelId' | 'lotId' | 'slot' | 'status' | 'demo'>;

/** An item with nothing recorded of it yet. */
export const newItem = ({ id, number, name, kind, modelId, lotId, slot, status, demo }: NewItem): Item => ({
  id,
  number,
  name,
  kind,
  modelId,
  lotId,
  slot,
  status,
  demo,
  modelVersion: null,
  expectedMinor: null,
  inside: null,
  receivedAt: null,
  stage: 'closed',
  opened: [],
  stepTimes: [],
  fasteners: new Map(),
  slots: new Map(),
  history: [],
  photos: [],
  costs: [],
  minutes: 0,
  proof: new Map(),
  tests: [],
  grade: null,
  asking: null,
  offers: [],
  sale: null,
  returns: 0,
  declined: new Map(),
  changedSeq: 0,
  changedAt: '',
});
