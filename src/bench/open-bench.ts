import { createAdvisor } from './advice/index.ts';
import type { Bench, BenchParts } from './bench.ts';
import { boardPoints } from './boards/index.ts';
import { booksView, breakdownView } from './books/index.ts';
import { growthView, pooledView } from './grow/growth-view.ts';
import { buildModel } from './grow/build-model.ts';
import { modelKey } from './grow/model-key.ts';
import { bundleOf } from './grow/share-model.ts';
import { netLoads, openingView } from './hands/index.ts';
import { learnedView, sharedBundle } from './learning/index.ts';
import { Calibrator } from './calibration/index.ts';
import { adopt } from './live/adopt.ts';
import { catchUp, emptyLive, type LiveLog } from './live/live-log.ts';
import { record } from './live/record.ts';
import { askingView, marketView, returnReserve } from './market/index.ts';
import type { Model } from './models/index.ts';
import { checkModel } from './netting/index.ts';
import { openPlanRoom } from './plan/index.ts';
import { planView } from './plan/plan-view.ts';
import type { LogStore } from './ports.ts';
import { conditionReport, unitStory } from './report/index.ts';
import { rowOf } from './row-of.ts';
import { benchView } from './show/bench-view.ts';
import { drawerView } from './show/drawer-view.ts';
import { findItem, historyOf, itemFile } from './show/item-file.ts';
import { pointViews } from './show/point-views.ts';
import { modelRows } from './show/model-rows.ts';
import type { BenchState, Item } from './state.ts';
import { listingText } from './selling/index.ts';
import { taxView, yearPack } from './tax/index.ts';
import { ROWS_VERSION } from './views/index.ts';

/**
 * The bench over a store: folds its log, makes the rows of its lists anew where they are behind, and answers from
 * memory. Every answer first takes in what other processes have appended.
 */
export const openBench = (parts: BenchParts): Bench => ({ ...benchOver(parts), items: (query) => parts.store.items(query) });

/** The bench without its lists, over what keeps it in step. */
export function benchOver(parts: Omit<BenchParts, 'store'> & { readonly store: LogStore }): Omit<Bench, 'items'> {
  const { store, models: shelf, boards, clock, device, version } = parts;
  const live = emptyLive(shelf);
  const { models } = live;
  const advisor = createAdvisor(models, boards);
  const calibrator = new Calibrator(shelf);
  const pointsOf = (model: Model) => boards?.knowledge(model, [])?.points ?? boardPoints(model);
  const planning = parts.planning && openPlanRoom(parts.planning.worker, parts.planning.log);
  const now = (): BenchState => {
    catchUp(live, store);
    return live.state;
  };
  const ofUnit = <T>(name: string, answer: (model: Model, item: Item) => T): T | null => {
    const item = findItem(now(), name);
    const model = item?.kind === 'unit' ? models.get(modelKey(item)) : undefined;
    return item && model ? answer(model, item) : null;
  };
  store.exclusively(() => mendRows(live, store));
  return {
    record: (events) => record({ live, store, clock, device, proofSteps: advisor.proofSteps, boardPoints: pointsOf }, events),
    adopt: (events) => adopt(live, store, events),
    state: now,
    overview: () => benchView(now(), { events: live.log.length, version, device }),
    item: (name) => {
      const item = findItem(now(), name);
      return item && itemFile(live, advisor, item);
    },
    history: (name) => {
      const item = findItem(now(), name);
      return item && historyOf(live, item);
    },
    pile: () => advisor.pile(now(), (item) => rowOf(live.state, item)),
    plan: () => (planning ? planning.view(advisor.desk(now())) : planView(now(), models, null)),
    planLast: () => planView(now(), models, planning ? planning.last() : null),
    planSettled: async () => (planning ? planning.settled(advisor.desk(now())) : planView(now(), models, null)),
    regretOf: async (question) => (planning ? planning.regret(advisor.desk(now()), question) : null),
    drawer: () => {
      const state = now();
      const worksChance = (itemId: string): number => advisor.worksChance(state, itemId);
      const plan = planning?.last().made?.plan;
      const opened = plan ? new Set(plan.items.flatMap(({ item, does }) => (does === 'open' ? [item] : []))) : null;
      return drawerView(state, models, {
        worksChance,
        wants: advisor.partWants(state, opened),
        today: clock.now().toISOString().slice(0, 10),
      });
    },
    books: () => booksView(now()),
    tax: (period) => taxView(now(), period),
    yearPack: (period) => yearPack(now(), period),
    learned: () => learnedView(now(), models),
    listingText: (name) => ofUnit(name, (model, item) => listingText(live.state, model, item)),
    conditionReport: (name, urlOf) => ofUnit(name, (model, item) => conditionReport(live, model, item, urlOf(item.id))),
    story: (name, choices) => ofUnit(name, (model, item) => unitStory(live, model, item, choices)),
    sharedLearning: (id) => {
      const model = models.get(id);
      return model ? sharedBundle(now(), model) : null;
    },
    calibration: (shouldStop = () => false) => calibrator.view(now(), live.log, shouldStop),
    breakdown: () => ({ ...breakdownView(now(), models), returns: returnReserve(live.state) }),
    watch: () => advisor.watch(now()),
    outlook: (question) => advisor.outlook(now(), question),
    lot: async (question) => (planning ? planning.lot(advisor.desk(now()), question) : null),
    compare: async (question) => (planning ? planning.compare(advisor.desk(now()), question) : null),
    sellerQuestions: (question) => advisor.sellerQuestions(now(), question),
    market: (id) => {
      const model = models.get(id);
      return model ? marketView(now(), model) : null;
    },
    opening: (name, goal) => ofUnit(name, (model, item) => openingView(live.state, model, item, goal)),
    asking: (name, bidMinor) => ofUnit(name, (model, item) => askingView(live.state, model, item, bidMinor)),
    models: () => modelRows(now(), models),
    model: (id) => models.get(id) ?? null,
    modelBundle: (id, giver) => {
      const grown = now().grown.get(id);
      return grown ? bundleOf(grown, giver) : null;
    },
    growth: (id) => {
      const grown = now().grown.get(id);
      const model = models.get(id);
      return model ? { growth: grown ? growthView(grown, shelf) : null, points: pooledView(model) } : null;
    },
    points: (id) => {
      const model = models.get(id);
      return model ? pointViews(model, boardPoints(model)) : null;
    },
    nets: (id) => {
      const model = models.get(id);
      return model ? netLoads(model) : null;
    },
    checkModel: (id, shouldStop) => {
      const state = now();
      const model = models.get(id);
      const grown = state.grown.get(id) ?? null;
      const problems = (grown && buildModel(grown, shelf)?.circuitProblems) ?? [];
      return model ? checkModel({ model, grown, problems, boards, hourMinor: state.settings.hourValueMinor, shouldStop }) : null;
    },
    log: (afterSeq, limit) => store.read(afterSeq, limit),
  };
}

/** Rows left behind by a crash, or made by an older version, are made anew from the state. */
function mendRows(live: LiveLog, store: LogStore): void {
  catchUp(live, store);
  const { seq, version } = store.rowsAt();
  if (seq === live.state.seq && version === ROWS_VERSION) return;
  const rows = [...live.state.items.values()].map((item) => rowOf(live.state, item));
  store.replaceRows(rows, { seq: live.state.seq, version: ROWS_VERSION });
}
