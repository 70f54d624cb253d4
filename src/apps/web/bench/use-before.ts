import { useState } from 'react';

type Chances = ReadonlyMap<string, number>;

interface Kept {
  readonly eventId: string | null;
  readonly now: Chances;
  readonly before: Chances;
}

/** What the chances were on this page before the last piece of evidence; empty until one came while it was open. */
export function useBefore(eventId: string | null, now: Chances): Chances {
  const [kept, setKept] = useState<Kept>({ eventId, now, before: new Map() });
  const next = kept.eventId === eventId ? kept : { eventId, now, before: kept.now };
  const isNew = next !== kept || ![...now].every(([key, chance]) => kept.now.get(key) === chance);
  if (isNew) setKept({ ...next, now });
  return next.before;
}
