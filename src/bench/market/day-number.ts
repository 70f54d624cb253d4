const DAY_MS = 86_400_000;

/** Days since 1970-01-01 of a day or a time in ISO 8601, in UTC. */
export const dayNumber = (iso: string): number => Math.floor(Date.parse(iso) / DAY_MS);

/** Days from one time to another, with their fractions; not below 0. */
export const daysBetween = (from: string, to: string): number => Math.max(0, (Date.parse(to) - Date.parse(from)) / DAY_MS);
