import type { BenchEvent, Stored } from '../events/index.ts';
import { isForeign } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { addOrphan, applyEvent, isRefolding } from './apply-event.ts';
import { resolveCorrections } from './corrections.ts';
import { emptyState } from './empty-state.ts';
import { missing } from './fold.ts';
import { giveNumbers, namesMadeBy } from './numbers.ts';

/** Looks at the state as it was before an event, and leaves it alone. */
export type Before = (state: Readonly<BenchState>, event: BenchEvent) => void;

/**
 * The state after a whole log, in its order. Corrected events do not count. Once the demo is put away, all that its
 * device recorded before does not count either, and what was recorded of its things becomes orphans without fuss.
 * `before` sees the state before each event that counts.
 */
export function foldLog(log: readonly Stored[], models: ReadonlyMap<string, Model>, before?: Before): BenchState {
  const state = emptyState();
  const { corrected, astray } = resolveCorrections(log);
  state.corrected = new Map(corrected);
  const putAwayAt = lastPutAway(log, corrected);
  const touched = new Set<string>();
  for (const stored of log) {
    const { event, seq } = stored;
    const demoAway = event.device === 'demo' && seq < putAwayAt;
    if (demoAway) for (const name of namesMadeBy(event)) state.putAway.add(name);
    if (demoAway || corrected.has(event.id)) {
      giveNumbers(state, event);
    } else if (isForeign(event) || !isRefolding(event.kind)) {
      if (before && !isForeign(event)) before(state, event);
      applyEvent(state, stored, models, touched);
    } else {
      applyRefolding(state, event, astray);
    }
    state.seq = seq;
  }
  return state;
}

function lastPutAway(log: readonly Stored[], corrected: ReadonlyMap<string, string>): number {
  const last = log.findLast(({ event }) => !isForeign(event) && event.kind === 'demo-put-away' && !corrected.has(event.id));
  return last?.seq ?? 0;
}

function applyRefolding(state: BenchState, event: BenchEvent, astray: ReadonlySet<string>): void {
  if (event.kind === 'demo-put-away') state.demo = 'put-away';
  if (event.kind === 'correction' && astray.has(event.id)) addOrphan(state, event, missing('earlier event', event.body.corrects));
}
