import { LinearProgramBuilder, type LinearProgram } from './linear-program.ts';
import { luckOf } from './luck.ts';
import { gainOf, hashText, type ModelData, type Problem } from './problem.ts';

/** The linear relaxation of a pile over sampled outcomes, with the places of what is read from its answer. */
export interface Relaxation {
  readonly program: LinearProgram;
  /** What the objective leaves out: the worth of what cannot be decided. */
  readonly constant: number;
  readonly unitColumn: readonly number[];
  /** By kind of thing: the column of each option. */
  readonly kinds: readonly { readonly things: readonly number[]; readonly columns: readonly number[] }[];
  /** By fill: a column for each of the first few, and one for all further ones. */
  readonly fillColumns: readonly (readonly number[])[];
  readonly hourRows: readonly number[];
  readonly moneyRow: number;
}

/** Further units of a model share a column from this one on, at the price of the first of them. */
const OWN_STEPS = 12;
/** So many copies of a fill have a luck of their own. */
const OWN_FILLS = 6;

/**
 * Things alike are pooled into counts: of a pool, in each sampled outcome a share works, and a fraction of the pool may be treated.
 * Whole numbers are given up everywhere. Because what is finished is a concave function of what works, replacing the things
 * treated by their share of the pool can only raise it (Jensen), and the optimum over a sample is on average not below the
 * true one (Mak, Morton & Wood 1999), so the mean of its optimum over samples bounds every plan from above.
 */
export function relaxationOf(problem: Problem, seed: string, outcomes: number, { whole = false, apart = false } = {}): Relaxation {
  return new Relaxing(problem, hashText(seed), outcomes, whole, apart).build();
}

class Relaxing {
  private readonly lp = new LinearProgramBuilder();
  private readonly unitColumn: number[] = [];
  private readonly kinds: { things: number[]; columns: number[] }[] = [];
  /** By thing. */
  private readonly kindOf: number[] = [];
  private readonly fillColumns: number[][] = [];
  private readonly hours: [number, number][] = [];
  private readonly money: [number, number][] = [];
  private readonly partUse: [number, number][][];
  private constant = 0;

  constructor(
    private readonly problem: Problem,
    private readonly seed: number,
    private readonly outcomes: number,
    private readonly whole: boolean,
    private readonly apart: boolean,
  ) {
    this.partUse = problem.parts.map(() => []);
  }

  build(): Relaxation {
    this.openings();
    this.treatments();
    this.fillings();
    this.purchases();
    const hourRows = Array.from({ length: this.outcomes }, (_, k) => this.outcome(k));
    const moneyRow = this.lp.row(-Infinity, this.problem.pile.limits.moneyMinor, this.money);
    const { unitColumn, kinds, fillColumns, constant } = this;
    return { program: this.lp.build(), constant, unitColumn, kinds, fillColumns, hourRows, moneyRow };
  }

  private openings(): void {
    for (const unit of this.problem.units) {
      this.constant += unit.asIsMinor;
      const column = this.lp.column(-unit.asIsMinor - unit.openMinutes * this.problem.minuteMinor, 0, 1, this.whole);
      this.unitColumn.push(column);
      if (unit.openMinutes > 0) this.hours.push([column, unit.openMinutes]);
    }
  }

  /** A column for each option of each kind; together they are as many as lie in the pool. */
  private treatments(): void {
    const { things, models } = this.problem;
    const index = new Map<string, number>();
    things.forEach(({ kind, options }, t) => {
      const key = this.apart && options.length > 1 ? `${kind} ${t}` : kind;
      const known = index.get(key) ?? this.kinds.push({ things: [], columns: [] }) - 1;
      index.set(key, known);
      this.kindOf[t] = known;
      this.kinds[known]!.things.push(t);
    });
    for (const { things: alike, columns } of this.kinds) {
      const { model, slot, options } = things[alike[0]!]!;
      const { leftFailed } = models[model]!;
      for (const { costMinor, minutes, needs } of options) {
        // Leftovers are counted here as failed; what works is counted in each outcome.
        const column = this.lp.column(leftFailed[slot]! - costMinor - minutes * this.problem.minuteMinor, 0, Infinity, this.whole);
        columns.push(column);
        if (minutes > 0) this.hours.push([column, minutes]);
        if (costMinor !== 0) this.money.push([column, costMinor]);
        for (const [part, n] of needs) this.partUse[part]!.push([column, n]);
      }
      const loose = alike.filter((t) => things[t]!.unit < 0).length;
      const units = alike.flatMap((t) => (things[t]!.unit < 0 ? [] : [[this.unitColumn[things[t]!.unit]!, -1] as [number, number]]));
      this.lp.row(loose, loose, [...columns.map((column) => [column, 1] as [number, number]), ...merged(units)]);
    }
  }

  /** The first copies of a fill have their own luck and are used in order; further ones count with their mean, which is never less. */
  private fillings(): void {
    const { fills, models, minuteMinor } = this.problem;
    for (const { part, model, slot, minutes } of fills) {
      const most = models[model]!.units.length + 1;
      const own = Math.min(OWN_FILLS, most);
      const columns = Array.from({ length: own + 1 }, (_, i) =>
        this.lp.column(models[model]!.leftFailed[slot]! - minutes * minuteMinor, 0, i < own ? 1 : most - own, this.whole),
      );
      for (const [i, column] of columns.entries()) {
        if (minutes > 0) this.hours.push([column, minutes]);
        this.partUse[part]!.push([column, 1]);
        if (i > 0)
          this.lp.row(-Infinity, 0, [
            [column, 1],
            [columns[i - 1]!, i < own ? -1 : -(most - own)],
          ]);
      }
      this.fillColumns.push(columns);
    }
  }

  /** What is used, and lies left over, comes from the drawer and from suppliers; postage in proportion to the share that is used of an order. */
  private purchases(): void {
    const { parts, suppliers, models } = this.problem;
    const posts = suppliers.map(({ postageMinor, waitMinor }) => {
      const column = this.lp.column(-postageMinor - waitMinor, 0, 1, this.whole);
      this.money.push([column, postageMinor]);
      return column;
    });
    const most = models.reduce((sum, { units }) => sum + units.length + 1, 0);
    parts.forEach((part, p) => {
      const left = this.lp.column(part.keptMinor, 0, Infinity);
      const entries: [number, number][] = [...merged(this.partUse[p]!), [left, 1]];
      part.offers.forEach((offer, s) => {
        if (!offer) return;
        const cap = Math.max(offer.least, this.mostUse(p, most));
        const bought = this.lp.column(-offer.unitMinor, 0, cap);
        this.money.push([bought, offer.unitMinor]);
        entries.push([bought, -1]);
        this.lp.row(-Infinity, 0, [
          [bought, 1],
          [posts[s]!, -cap],
        ]);
      });
      this.lp.row(part.stock, part.stock, entries);
    });
  }

  private mostUse(p: number, perFill: number): number {
    const { things, fills, models } = this.problem;
    const filled = fills.reduce((sum, fill) => (fill.part === p ? sum + Math.min(perFill, models[fill.model]!.units.length + 1) : sum), 0);
    const used = things.reduce(
      (sum, { options }) =>
        sum +
        options.reduce(
          (most, { needs }) =>
            Math.max(
              most,
              needs.reduce((n, need) => (need[0] === p ? n + need[1] : n), 0),
            ),
          0,
        ),
      0,
    );
    return filled + used;
  }

  /** The second stage in one outcome; its row of hours comes out. */
  private outcome(k: number): number {
    const hours: [number, number][] = [...this.hours];
    for (const model of this.problem.models) hours.push(...this.finishing(model, k));
    return this.lp.row(-Infinity, this.problem.pile.limits.minutes, hours);
  }

  private finishing(model: ModelData, k: number): [number, number][] {
    const { minuteMinor } = this.problem;
    const share = 1 / this.outcomes;
    const most = Math.max(1, model.units.length + 1);
    const built: number[] = [];
    const steps = model.eachFurther === 1 ? 1 : Math.min(most, OWN_STEPS);
    for (let j = 1; j <= steps; j++) built.push(this.lp.column(share * gainOf(model, minuteMinor, j), 0, j === steps ? most : 1));
    const originals = model.moreMinor > 0 ? this.lp.column(share * model.moreMinor, 0, most) : -1;
    if (originals >= 0) this.lp.row(-Infinity, 0, [[originals, 1], ...built.map((column) => [column, -1] as [number, number])]);
    model.pools.forEach(({ things, fills }, s) => {
      const { working, own } = this.working(things, fills, k);
      const left = this.lp.column(share * (model.leftWorks[s]! - model.leftFailed[s]!), -Infinity, Infinity);
      this.lp.row(0, 0, [[left, -1], ...working]);
      this.lp.row(-Infinity, 0, [...built.map((column) => [column, 1] as [number, number]), [left, -1]]);
      if (originals >= 0 && model.original.includes(s))
        this.lp.row(-Infinity, 0, [[originals, 1], ...own.map(([c, v]) => [c, -v] as [number, number])]);
    });
    return built.map((column) => [column, model.buildMinutes]);
  }

  /** What works in one slot in one outcome, as a sum over columns: everything, and without fills and loose things. */
  private working(
    things: readonly number[],
    fills: readonly number[],
    k: number,
  ): { working: [number, number][]; own: [number, number][] } {
    const kinds = new Set(things.map((t) => this.kindOf[t]!));
    const own: [number, number][] = [];
    for (const kind of kinds) {
      const { things: alike, columns } = this.kinds[kind]!;
      const lucks = alike.map((t) => luckOf(this.seed, this.problem.things[t]!.luck, k));
      this.problem.things[alike[0]!]!.options.forEach(({ chance }, o) => {
        const works = lucks.filter((luck) => luck < chance).length / alike.length;
        if (works > 0) own.push([columns[o]!, works]);
      });
    }
    const filled = fills.flatMap((f) => {
      const { chance, luck } = this.problem.fills[f]!;
      const columns = this.fillColumns[f]!;
      return columns.map((column, i): [number, number] => {
        if (i === columns.length - 1) return [column, chance];
        return [column, luckOf(this.seed, hashText(`${luck} ${i}`), k) < chance ? 1 : 0];
      });
    });
    return { working: [...own, ...filled], own };
  }
}

/** Entries of the same column added up. */
function merged(entries: readonly (readonly [number, number])[]): [number, number][] {
  const sums = new Map<number, number>();
  for (const [column, value] of entries) sums.set(column, (sums.get(column) ?? 0) + value);
  return [...sums];
}
