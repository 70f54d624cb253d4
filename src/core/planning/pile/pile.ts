/** The reserved name of "nothing is wrong with it" among the fault classes of an assembly. */
export const WORKS = 'works';

/** Everything owned and unfinished, as numbers: what a plan is made from. Money in minor units of one currency, times in minutes and days. */
export interface Pile {
  readonly models: readonly PileModel[];
  readonly items: readonly PileItem[];
  readonly parts: readonly PilePart[];
  readonly suppliers: readonly Supplier[];
  readonly limits: Limits;
  readonly wishes: Wishes;
}

/** What may be spent until the plan is made anew. */
export interface Limits {
  readonly moneyMinor: number;
  readonly minutes: number;
  /** How many of the minutes there are in a week; the plan spreads its work by it. */
  readonly minutesAWeek: number;
}

/** What the person wants. */
export interface Wishes {
  /** What an hour of work costs them. */
  readonly hourMinor: number;
  /** 0 counts the mean alone; 1 counts the mean of the worst tenth alone. */
  readonly riskShare: number;
  /** What it costs to wait a day for an order. */
  readonly dayMinor: number;
  /** Orders that take longer are not considered. */
  readonly withinDays: number;
}

export interface PileModel {
  readonly id: string;
  readonly slots: readonly PileSlot[];
  /** Putting a unit together from working assemblies, proving and listing it. */
  readonly buildMinutes: number;
  /** What a complete working unit brings, fees and postage gone. */
  readonly soldMinor: number;
  /** The price of each further one of the same plan as a share of the one before; 1 when it does not fall. */
  readonly eachFurther: number;
  /** A unit in which these slots hold what came in it brings so much more. */
  readonly original: { readonly slots: readonly string[]; readonly moreMinor: number };
  /** Standard deviation of the logarithm of the price. */
  readonly priceSpread: number;
}

export interface PileSlot {
  readonly id: string;
  readonly works: Leftover;
  readonly failed: Leftover;
}

/** What one assembly is worth that went into no unit: the best of the three is done. */
export interface Leftover {
  readonly soldMinor: number;
  readonly keptMinor: number;
  readonly scrapMinor: number;
}

/** A unit, or an assembly that lies loose; the latter has one assembly and no `whole`. */
export interface PileItem {
  readonly id: string;
  readonly model: string;
  readonly assemblies: readonly Assembly[];
  readonly whole?: { readonly asIsMinor: number; readonly openMinutes: number };
  /** The person wants to keep it: it is not touched. */
  readonly keep?: boolean;
}

/** What sits in a slot. A slot that is not named is empty. */
export interface Assembly {
  readonly slot: string;
  /** Chance of each fault class, `works` among them; together 1. */
  readonly faults: Readonly<Record<string, number>>;
  readonly remedies: readonly Remedy[];
  /** Work that has begun: another remedy, or none, costs so much. */
  readonly started?: { readonly remedy: string; readonly switchMinor: number };
}

export interface Remedy {
  readonly id: string;
  /** Chance that the assembly works afterwards, by what was wrong; classes that are not named are not mended. */
  readonly mends: Readonly<Record<string, number>>;
  /** Chance that the work ruins the assembly whatever was wrong; 1 for taking parts off it. */
  readonly harm: number;
  readonly costMinor: number;
  readonly minutes: number;
  /** Standard deviation of the minutes. */
  readonly minutesSpread: number;
  readonly uses: Readonly<Record<string, number>>;
  readonly gives: Readonly<Record<string, number>>;
}

/** A kind of part: a component that remedies use, or an assembly that fills slots, or both. */
export interface PilePart {
  readonly id: string;
  readonly stock: number;
  /** What one that is left over is worth in the drawer. */
  readonly keptMinor: number;
  readonly fills: readonly { readonly model: string; readonly slot: string; readonly chance: number; readonly minutes: number }[];
}

export interface Supplier {
  readonly id: string;
  readonly postageMinor: number;
  readonly days: number;
  readonly offers: readonly { readonly part: string; readonly unitMinor: number; readonly least: number }[];
}

/** Chance that an assembly works after a remedy; without one, that it works as it is. */
export function chanceAfter({ faults }: Assembly, remedy: Remedy | null): number {
  const asIs = faults[WORKS] ?? 0;
  if (!remedy) return asIs;
  const mended = Object.entries(remedy.mends).reduce(
    (sum, [fault, chance]) => sum + (fault === WORKS ? 0 : (faults[fault] ?? 0) * chance),
    0,
  );
  return Math.min(1, (asIs + mended) * (1 - remedy.harm));
}

/** The best that can be done with a leftover. */
export const worthLeft = ({ soldMinor, keptMinor, scrapMinor }: Leftover): number => Math.max(soldMinor, keptMinor, scrapMinor);
