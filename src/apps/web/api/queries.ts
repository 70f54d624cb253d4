import { keepPreviousData, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import type { ModelBundle } from '../../../bench/events/index.ts';
import type { ModelFile, ReferenceReading } from '../../../bench/models/index.ts';
import type {
  AskingView,
  BenchView,
  BooksView,
  ChoiceQuestion,
  CompareQuestion,
  CompareView,
  BreakdownView,
  CalibrationView,
  DrawerView,
  FitsSeenView,
  GrowthView,
  ItemFile,
  ItemRow,
  LearnedView,
  LotQuestion,
  LotView,
  ListingTextView,
  MarketView,
  ModelRow,
  NetView,
  OpeningView,
  OutlookView,
  PileView,
  PlanView,
  PointView,
  PooledPointView,
  ScoutQuestion,
  SellerQuestions,
  TaxView,
  WatchView,
} from '../../../bench/views/index.ts';
import type { PlacedPart } from '../board/drawn-part.ts';
import type { BoardMarks } from '../../../bench/views/board-marks.ts';
import { ask, askWith } from './ask.ts';

const NEXT_SLICE_MS = 50;

/** What the bench can be asked, one hook a question. All are asked anew when the log grows. */

export const benchQuery = {
  queryKey: ['bench'],
  queryFn: ({ signal }: { signal: AbortSignal }) => ask<BenchView>('/api/bench', { signal }),
};

export const useBench = () => useQuery(benchQuery);

export const usePile = () => useQuery({ queryKey: ['pile'], queryFn: ({ signal }) => ask<PileView>('/api/pile', { signal }) });

/** The plan of the whole pile; asked again while it is being made. */
export const usePlan = () =>
  useQuery({
    queryKey: ['plan'],
    queryFn: ({ signal }) => ask<PlanView>('/api/plan', { signal }),
    refetchInterval: ({ state }) => (state.data?.stage === 'making' ? 1000 : false),
  });

/** The last plan that was made, for pages that only tell of it. */
export const useLastPlan = () =>
  useQuery({ queryKey: ['last-plan'], queryFn: ({ signal }) => ask<PlanView>('/api/plan?wait=last', { signal }) });

/** What a decision other than the planned one would cost; null asks nothing. */
export const useRegret = (question: ChoiceQuestion | null) =>
  useQuery({
    queryKey: ['regret', question],
    enabled: question !== null,
    queryFn: ({ signal }) => askWith<{ regret_minor: number }>('/api/plan/choice', question, signal),
  });

export const useDrawer = () => useQuery({ queryKey: ['drawer'], queryFn: ({ signal }) => ask<DrawerView>('/api/drawer', { signal }) });

export const useBooks = () => useQuery({ queryKey: ['books'], queryFn: ({ signal }) => ask<BooksView>('/api/books', { signal }) });

export const useWatch = () => useQuery({ queryKey: ['scout'], queryFn: ({ signal }) => ask<WatchView>('/api/scout', { signal }) });

export const useModels = () =>
  useQuery({
    queryKey: ['models'],
    queryFn: async ({ signal }) => (await ask<{ models: ModelRow[] }>('/api/models', { signal })).models,
  });

export interface ModelPage {
  readonly file: ModelFile;
  /** Of a model that grows here: how many events made it; null for one of the folder. */
  readonly version: number | null;
  readonly readings: readonly ReferenceReading[];
  readonly photos: readonly { readonly side: string; readonly url: string }[];
  /** Parts on the board; none below level 2. */
  readonly parts: readonly PlacedPart[];
}

export const useModel = (id: string | undefined) =>
  useQuery({
    queryKey: ['model', id],
    enabled: id !== undefined,
    queryFn: ({ signal }) => ask<ModelPage>(`/api/models/${encodeURIComponent(id!)}`, { signal }),
  });

/** How a model grew here, and what its known-good boards show; `growth` is null for a model of the folder. */
export const useGrowth = (id: string) =>
  useQuery({
    queryKey: ['growth', id],
    queryFn: ({ signal }) =>
      ask<{ growth: GrowthView | null; points: PooledPointView[] }>(`/api/models/${encodeURIComponent(id)}/growth`, { signal }),
  });

export interface Sharing {
  readonly leaves: readonly string[];
  readonly photos: readonly string[];
  readonly facts: ModelBundle['facts'];
}

/** All that would leave with the bundle of a model; null for one of the folder. */
export const useSharing = (id: string, author: string, licence: string) =>
  useQuery({
    queryKey: ['sharing', id, author, licence],
    placeholderData: keepPreviousData,
    queryFn: async ({ signal }) => {
      const giver = new URLSearchParams({ author, licence }).toString();
      return (await ask<{ sharing: Sharing | null }>(`/api/models/${encodeURIComponent(id)}/sharing?${giver}`, { signal })).sharing;
    },
  });

/** What was marked on the picture of the board of a model that grows here. */
export const useBoardMarks = (modelId: string) =>
  useQuery({
    queryKey: ['board-marks', modelId],
    queryFn: ({ signal }) => ask<BoardMarks>(`/api/models/${encodeURIComponent(modelId)}/marks`, { signal }),
  });

/** Which parts and assemblies of other models go into the slots of a model. */
export const useFitsSeen = (modelId: string) =>
  useQuery({
    queryKey: ['fits-seen', modelId],
    queryFn: ({ signal }) => ask<FitsSeenView>(`/api/models/${encodeURIComponent(modelId)}/fits`, { signal }),
  });

/** Where boards of a model can be measured. */
export const usePoints = (modelId: string) =>
  useQuery({
    queryKey: ['points', modelId],
    queryFn: async ({ signal }) =>
      (await ask<{ points: PointView[] }>(`/api/models/${encodeURIComponent(modelId)}/points`, { signal })).points,
  });

/** What the nets of a board carry at most; asked only for a model that is named. */
export const useNets = (modelId: string) =>
  useQuery({
    queryKey: ['nets', modelId],
    enabled: modelId !== '',
    queryFn: async ({ signal }) => (await ask<{ nets: NetView[] }>(`/api/models/${encodeURIComponent(modelId)}/nets`, { signal })).nets,
  });

export const useItem = (id: string) => useQuery(itemQuery(id));

export const itemQuery = (id: string) => ({
  queryKey: ['item', id],
  queryFn: ({ signal }: { signal: AbortSignal }) => ask<ItemFile>(`/api/items/${encodeURIComponent(id)}`, { signal }),
});

/** How to open an item to a goal, or to close it; the first goal of its model where none is named. */
export const useOpening = (id: string, goal: string | null) =>
  useQuery({
    queryKey: ['opening', id, goal],
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) =>
      ask<OpeningView>(`/api/items/${encodeURIComponent(id)}/opening${goal === null ? '' : `?to=${encodeURIComponent(goal)}`}`, { signal }),
  });

export interface ItemSearch {
  readonly q?: string;
  readonly status?: string;
  readonly kind?: string;
  readonly model?: string;
}

interface ItemPage {
  readonly rows: readonly ItemRow[];
  readonly next: string | null;
}

/** Items page by page, newest change first. */
export const useItems = (search: ItemSearch, limit = 30) =>
  useInfiniteQuery({
    queryKey: ['items', search, limit],
    initialPageParam: '',
    placeholderData: keepPreviousData,
    queryFn: ({ pageParam, signal }) => ask<ItemPage>(`/api/items?${itemsQueryString(search, limit, pageParam)}`, { signal }),
    getNextPageParam: (page) => page.next,
  });

function itemsQueryString(search: ItemSearch, limit: number, after: string): string {
  const all = { ...search, after, limit: String(limit) };
  return new URLSearchParams(Object.entries(all).filter(([, value]) => value !== '' && value !== undefined)).toString();
}

/** What a listing is worth to this bench; null while there is no question. */
export const useOutlook = (question: ScoutQuestion | null) =>
  useQuery({
    queryKey: ['outlook', question],
    enabled: question !== null,
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) => askWith<OutlookView>('/api/scout', question, signal),
  });

/** What a lot is worth to the pile as it is planned; null while there is no question. */
export const useLot = (question: LotQuestion | null) =>
  useQuery({
    queryKey: ['lot', question],
    enabled: question !== null,
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) => askWith<LotView>('/api/scout/lot', question, signal),
  });

/** Listings side by side by what each would add to the pile. */
export const useComparison = (question: CompareQuestion) =>
  useQuery({
    queryKey: ['compare', question],
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) => askWith<CompareView>('/api/scout/compare', question, signal),
  });

/** What to ask the seller of a listing. */
export const useSellerQuestions = (question: ScoutQuestion) =>
  useQuery({
    queryKey: ['seller-questions', question],
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) => askWith<SellerQuestions>('/api/scout/questions', question, signal),
  });

export const useLearned = () => useQuery({ queryKey: ['learned'], queryFn: ({ signal }) => ask<LearnedView>('/api/learned', { signal }) });

/** Reckoned in slices: asked again until all is judged. */
export const useCalibration = () =>
  useQuery({
    queryKey: ['calibration'],
    queryFn: ({ signal }) => ask<CalibrationView>('/api/calibration', { signal }),
    refetchInterval: ({ state: { data } }) => (data && data.judged < data.to_judge ? NEXT_SLICE_MS : false),
  });

export const useBreakdown = () =>
  useQuery({ queryKey: ['breakdown'], queryFn: ({ signal }) => ask<BreakdownView>('/api/books/breakdown', { signal }) });

export const useMarket = (modelId: string) =>
  useQuery({
    queryKey: ['market', modelId],
    queryFn: ({ signal }) => ask<MarketView>(`/api/models/${encodeURIComponent(modelId)}/market`, { signal }),
  });

/** What to ask for a unit; a bid of null asks for nothing more. */
export const useAsking = (itemId: string, bidMinor: number | null, enabled = true) =>
  useQuery({
    queryKey: ['asking', itemId, bidMinor],
    enabled,
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) =>
      ask<AskingView>(`/api/items/${encodeURIComponent(itemId)}/asking${bidMinor === null ? '' : `?bid_minor=${bidMinor}`}`, { signal }),
  });

export const useListingText = (itemId: string) =>
  useQuery({
    queryKey: ['listing-text', itemId],
    queryFn: ({ signal }) => ask<ListingTextView>(`/api/items/${encodeURIComponent(itemId)}/listing-text`, { signal }),
  });

/** The books of a period; asked only for a period that is one. */
export const useTax = (from: string, to: string, enabled: boolean) =>
  useQuery({
    queryKey: ['tax', from, to],
    enabled,
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) => ask<TaxView>(`/api/books/tax?from=${from}&to=${to}`, { signal }),
  });
