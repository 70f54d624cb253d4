const DAY = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', year: 'numeric' });
const TIME = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
const MONTH = new Intl.DateTimeFormat(undefined, { month: 'long', year: 'numeric', timeZone: 'UTC' });

/** "3 May 2026" in the person's own time zone. */
export const day = (iso: string): string => DAY.format(new Date(iso));

/** "3 May, 14:05". */
export const dayAndTime = (iso: string): string => TIME.format(new Date(iso));

/** "May 2026" for "2026-05". */
export const monthName = (month: string): string => MONTH.format(new Date(`${month}-01T00:00:00Z`));
