import { STAGES } from '../events/index.ts';
import type { Item } from '../state.ts';
import type { Apply, Fold } from './fold.ts';
import { onItem, touch } from './fold.ts';

/** Opening a unit further than it was undoes its proof; closing it again does not. */
export const openedTo: Apply<'opened-to'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const deeper = STAGES.indexOf(event.body.stage) > STAGES.indexOf(item.stage);
    item.stage = event.body.stage;
    item.minutes += event.body.minutes;
    if (item.stage === 'closed') item.opened = [];
    if (deeper) undoProof(item);
  });

export const remedyDone: Apply<'remedy-done'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { remedy, place, outcome, minutes } = event.body;
    item.history.push({ kind: 'remedy', remedy, place: place ?? null, outcome, minutes, eventId: event.id, at: event.at });
    item.minutes += minutes;
    undoProof(item);
    undoProofOfHome(fold, item, event.at);
  });

/** Work touched it: steps that were proved, what was measured and the grade given no longer count, and it is no longer for sale as it was. */
export function undoProof(item: Item): void {
  item.proof.clear();
  for (const test of item.tests) test.beforeWork = true;
  item.grade = null;
  backToBench(item);
}

/** A unit that was proved or for sale is on the bench again. */
export function backToBench(item: Item): void {
  if (item.status !== 'proved' && item.status !== 'listed') return;
  item.status = item.kind === 'unit' ? 'on-the-bench' : 'in-the-drawer';
  item.asking = null;
}

function undoProofOfHome(fold: Fold, assembly: Item, at: string): void {
  const home = fold.state.items.get(assembly.inside ?? '');
  if (!home) return;
  undoProof(home);
  touch(fold, home, at);
}
