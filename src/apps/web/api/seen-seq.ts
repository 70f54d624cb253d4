/** How far into the log of the bench this page has asked anew; one page, one bench. */
let seen = 0;
/** Batches of this page that are on their way. */
let underWay = 0;

/** The log is known to reach at least this far, and what is shown will hold it. */
export function sawUpTo(seq: number): void {
  seen = Math.max(seen, seq);
}

/** Sends a batch of this page; while it is on its way, whatever the log grows by may be just that. */
export async function whileWriting<T>(send: () => Promise<T>): Promise<T> {
  underWay++;
  try {
    return await send();
  } finally {
    underWay--;
  }
}

/** How far into the log this page knows it to reach. */
export const seenUpTo = (): number => seen;

export const isWriting = (): boolean => underWay > 0;

/** Whether the log has grown beyond what this page has seen; if so, it counts as seen from now on. */
export function isNews(seq: number): boolean {
  if (seq <= seen) return false;
  seen = seq;
  return true;
}
