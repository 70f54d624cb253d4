/** How far into the log of the bench this page has asked anew; one page, one bench. */
let seen = 0;

/** The log is known to reach at least this far, and what is shown will hold it. */
export function sawUpTo(seq: number): void {
  seen = Math.max(seen, seq);
}

/** Whether the log has grown beyond what this page has seen; if so, it counts as seen from now on. */
export function isNews(seq: number): boolean {
  if (seq <= seen) return false;
  seen = seq;
  return true;
}
