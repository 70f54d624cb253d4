/** What to do with the pile, by names, with the figures that say why. Money in minor units. */
export interface PilePlan {
  readonly seed: string;
  readonly items: readonly ItemPlan[];
  /** Parts that go into slots, from the drawer or an order. */
  readonly fits: readonly { readonly part: string; readonly model: string; readonly slot: string; readonly count: number }[];
  readonly baskets: readonly Basket[];
  /** Minutes of expected work by week from the first. */
  readonly weeks: readonly { readonly week: number; readonly minutes: number }[];
  readonly spent: { readonly moneyMinor: number; readonly minutesNow: number; readonly minutesExpected: number; readonly built: number };
  readonly profit: ProfitSpread;
  readonly against: { readonly aloneMinor: number; readonly scrapMinor: number };
  /** What no plan could earn more than, on average over samples; null where it was not reckoned. */
  readonly boundMinor: number | null;
  /** What an hour and a unit of money would add by the linear relaxation; they rank, they do not promise. */
  readonly prices: { readonly hourMinor: number; readonly money: number };
}

export interface ItemPlan {
  readonly item: string;
  readonly model: string;
  /** `open`: its assemblies go into the pools; `as-is`: sold as it is; `keep`: not touched; `loose`: an assembly in its pool. */
  readonly does: 'open' | 'as-is' | 'keep' | 'loose';
  /** By slot: the remedy to try. Slots that are left as they are do not appear. */
  readonly remedies: Readonly<Record<string, string>>;
  /** Share of outcomes in which its own originals end up in a finished unit, and in which at least one assembly of it helps another. */
  readonly finishedShare: number;
  readonly donorShare: number;
  /** The next best, and how much less the whole plan would earn with it; null where there is no other way. */
  readonly second: Second | null;
  /** For a unit: what to do otherwise with it as a whole, and how much less the plan would earn. */
  readonly otherwise: Second | null;
}

export type Second =
  | { readonly kind: 'open' | 'as-is'; readonly lessMinor: number }
  | { readonly kind: 'remedy'; readonly slot: string; readonly remedy: string | null; readonly lessMinor: number };

export interface Basket {
  readonly supplier: string;
  readonly days: number;
  readonly postageMinor: number;
  readonly lines: readonly { readonly part: string; readonly count: number; readonly costMinor: number }[];
  readonly costMinor: number;
}

/** Of the simulated outcomes, with prices swinging as they do. */
export interface ProfitSpread {
  readonly meanMinor: number;
  /** Half the width of a 95 % interval of the mean. */
  readonly meanErrorMinor: number;
  readonly worstTenthMinor: number;
  /** Values that the profit stays below with chance 0.05, 0.25, 0.5, 0.75 and 0.95. */
  readonly quantilesMinor: readonly [number, number, number, number, number];
  /** Twenty bars of equal width from the least to the most, as shares. */
  readonly bars: { readonly fromMinor: number; readonly toMinor: number; readonly shares: readonly number[] };
}
