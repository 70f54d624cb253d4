/** How a thing was sold: the grades of the bench, best first, and "parts" for one that does not work. */
export const CONDITIONS = ['A', 'B', 'C', 'D', 'parts'] as const;
export type Condition = (typeof CONDITIONS)[number];

/** What of a thing moves its price. Shares are 0..1; null where it is not known. */
export interface Features {
  readonly condition: Condition;
  /** Share of what belongs to it that came with it: box, cover, cable. */
  readonly complete: number | null;
  /** 1 when its screen and shell are its own, 0 when all were replaced. */
  readonly original: number | null;
}

/** One thing of a model that changed hands. */
export interface Sale extends Features {
  readonly id: string;
  /** What was paid for the thing in minor units of the bench's currency, postage left out. */
  readonly priceMinor: number;
  /** Days since 1970-01-01. */
  readonly day: number;
}
