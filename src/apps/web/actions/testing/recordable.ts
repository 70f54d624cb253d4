import { parseEvent, type AnyEvent } from '../../../../bench/events/index.ts';
import type { Gesture } from '../gesture.ts';
import { stamp } from '../stamp.ts';

/**
 * The events of a gesture as the bench would read them. Throws when one of them is not an event that the bench takes:
 * the law of this folder is that every gesture can be recorded.
 */
export function recordable(gesture: Gesture): AnyEvent[] {
  let made = 0;
  const newId = (): string => `0198c0de-0000-7000-8000-${String(++made).padStart(12, '0')}`;
  const events = stamp(gesture.drafts, { newId, now: () => new Date('2026-05-01T09:30:00Z'), device: 'desk-1' });
  return events.map((event) => {
    const parsed = parseEvent(JSON.parse(JSON.stringify(event)));
    if (!parsed.ok) throw new Error(`${event.kind}: ${parsed.field} ${parsed.message}`);
    return parsed.event;
  });
}

/** The kinds of the events of a gesture, in order. */
export const kindsOf = (gesture: Gesture): string[] => recordable(gesture).map((event) => event.kind);
