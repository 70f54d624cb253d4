import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { assertBalanced } from '../../core/books/index.ts';
import { carriedByAccount } from '../books/carried-by-account.ts';
import { costOf } from '../books/carried.ts';
import { isForeign, type Stored } from '../events/index.ts';
import { stateText } from '../state-text.ts';
import type { BenchState } from '../state.ts';
import { anyLog } from '../testing/any-event.ts';
import { smallModels } from '../testing/small-model.ts';
import { applyEvent, emptyState, foldLog } from './index.ts';

const models = smallModels();

/** The state event by event, as the running bench makes it: folded again from the start whenever that is asked for. */
function foldStepwise(log: readonly Stored[]): BenchState {
  let state = emptyState();
  log.forEach((stored, index) => {
    if (applyEvent(state, stored, models) === 'refold') state = foldLog(log.slice(0, index + 1), models);
  });
  return state;
}

test('any sequence of valid events folds, and no penny is lost: the journal and the things agree', () => {
  fc.assert(
    fc.property(anyLog(), (log) => {
      const state = foldLog(log, models);
      assertBalanced(state.journal, { ...carriedByAccount(state) });
    }),
    { numRuns: 1000 },
  );
});

test('no item, bag or order ever carries a negative cost or count', () => {
  fc.assert(
    fc.property(anyLog(), (log) => {
      const state = foldLog(log, models);
      for (const item of state.items.values()) expect(costOf(item), item.id).toBeGreaterThanOrEqual(0);
      for (const bag of state.bags.values()) {
        expect(bag.count).toBe(bag.layers.reduce((sum, layer) => sum + layer.count, 0));
        for (const layer of bag.layers) expect(Math.min(layer.costMinor, layer.count - 1)).toBeGreaterThanOrEqual(0);
      }
    }),
    { numRuns: 300 },
  );
});

test('slots and the assemblies that sit in them always agree, and what sits in a unit carries no cost itself', () => {
  fc.assert(
    fc.property(anyLog(), (log) => {
      const { items } = foldLog(log, models);
      for (const item of items.values()) {
        for (const [slot, inside] of item.slots) if (inside !== null) expect(items.get(inside)).toMatchObject({ inside: item.id, slot });
        if (item.inside === null) continue;
        expect(items.get(item.inside)!.slots.get(item.slot)).toBe(item.id);
        expect(costOf(item)).toBe(0);
      }
    }),
    { numRuns: 500 },
  );
});

test('folding event by event gives the same state as folding the whole log', () => {
  fc.assert(
    fc.property(anyLog(), (log) => {
      expect(stateText(foldStepwise(log))).toBe(stateText(foldLog(log, models)));
    }),
    { numRuns: 500 },
  );
});

test('an event about an item marks that item as changed, or is kept as an orphan, or was undone or put away', () => {
  fc.assert(
    fc.property(anyLog(), (log) => {
      const state = foldLog(log, models);
      const orphans = new Set(state.orphans.map((orphan) => orphan.eventId));
      expect(orphans.size).toBe(state.orphans.length);
      const putAwayAt = log.findLastIndex(({ event }) => event.kind === 'demo-put-away' && !state.corrected.has(event.id));
      for (const [index, { seq, event }] of log.entries()) {
        const away = event.device === 'demo' && index < putAwayAt;
        const itemId = isForeign(event) || !('item_id' in event.body) ? undefined : event.body.item_id;
        if (itemId === undefined || away || state.corrected.has(event.id) || orphans.has(event.id)) continue;
        expect(state.items.get(itemId)!.changedSeq).toBeGreaterThanOrEqual(seq);
      }
    }),
    { numRuns: 300 },
  );
});
