import type { Claim } from '../events/index.ts';
import type { Item } from '../state.ts';
import type { Apply } from './fold.ts';
import { onItem } from './fold.ts';

/** A claim that the same seller made before, in the listing or here, is not heard twice. */
export const claimMade: Apply<'claim-made'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const seller = fold.state.lots.get(item.lotId ?? '')?.seller ?? '';
    if (heardBefore(item, event.body.claim)) return;
    item.history.push({ kind: 'claim', claim: event.body.claim, seller, eventId: event.id, at: event.at });
  });

export const trialDone: Apply<'trial-done'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { function: fn, outcome, minutes } = event.body;
    item.history.push({ kind: 'trial', function: fn, outcome, with: event.body.with, eventId: event.id, at: event.at });
    item.minutes += minutes;
  });

export const findingNoted: Apply<'finding-noted'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { place, sees, minutes, region } = event.body;
    item.history.push({ kind: 'finding', place, sees, eventId: event.id, at: event.at, ...(region ? { region } : {}) });
    item.minutes += minutes;
  });

export const readingTaken: Apply<'reading-taken'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { point, mode, value, minutes } = event.body;
    item.history.push({ kind: 'reading', point, mode, value, eventId: event.id, at: event.at });
    item.minutes += minutes;
  });

export const photoTaken: Apply<'photo-taken'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { photo, side, caption } = event.body;
    item.photos.push({ hash: photo, side, caption, eventId: event.id });
  });

export const adviceDeclined: Apply<'advice-declined'> = (fold, event) =>
  onItem(fold, event, (item) => {
    item.declined.set(event.body.advice, event.body.reason);
  });

export const noteWritten: Apply<'note-written'> = (fold, event) => {
  const { item_id } = event.body;
  return item_id === undefined ? null : onItem(fold, { at: event.at, body: { item_id } }, () => null);
};

export const timeClocked: Apply<'time-clocked'> = (fold, event) => {
  const { item_id, minutes } = event.body;
  if (item_id === undefined) {
    fold.state.looseMinutes += minutes;
    return null;
  }
  return onItem(fold, { at: event.at, body: { item_id } }, (item) => {
    item.minutes += minutes;
  });
};

const heardBefore = (item: Item, claim: Claim): boolean =>
  item.history.some((entry) => entry.kind === 'claim' && claimText(entry.claim) === claimText(claim));

function claimText(claim: Claim): string {
  if (claim.about === 'function') return `function ${claim.function} ${claim.says}`;
  return claim.about === 'place' ? `place ${claim.place} ${claim.sees}` : claim.about;
}
