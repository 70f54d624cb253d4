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
  readonly fillColumn: readonly number[];
  readonly hourRows: readonly number[];
  readonly moneyRow: number;
}

/** Further units of a model share a column from this one on, at the price of the first of them. */
const OWN_STEPS = 12;

/**
 * Things alike are pooled into counts: of a pool, in each sampled outcome a share works, and a fraction of the pool may be treated.
 * Whole numbers are given up everywhere. Because what is finished is a concave function of what works, replacing the things
 * treated by their share of the pool can only raise it (Jensen), and the optimum over a sample is on average not below the
 * true one (Mak, Morton & Wood 1999), so the mean of its optimum over samples bounds every plan from above.
 */
export function relaxationOf(problem: Problem, seed: string, outcomes: number): Relaxation {
  return new Relaxing(problem, hashText(seed), outcomes).build();
}

class Relaxing {
  private readonly lp = new LinearProgramBuilder();
  private readonly unitColumn: number[] = [];
  private readonly kinds: { things: number[]; columns: number[] }[] = [];
  private readonly kindOf = new Map<string, number>();
  private readonly fillColumn: number[] = [];
  private readonly hours: [number, number][] = [];
  private readonly money: [number, number][] = [];
  private readonly partUse: [number, number][][];
  private constant = 0;

  constructor(
    private readonly problem: Problem,
    private readonly seed: number,
    private readonly outcomes: number,
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
    const { unitColumn, kinds, fillColumn, constant } = this;
    return { program: this.lp.build(), constant, unitColumn, kinds, fillColumn, hourRows, moneyRow };
  }

  private openings(): void {
    for (const unit of this.problem.units) {
      this.constant += unit.asIsMinor;
      const column = this.lp.column(-unit.asIsMinor - unit.openMinutes * this.problem.minuteMinor, 0, 1);
      this.unitColumn.push(column);
      if (unit.openMinutes > 0) this.hours.push([column, unit.openMinutes]);
    }
  }

  /** A column for each option of each kind; together they are as many as lie in the pool. */
  private treatments(): void {
    const { things, models } = this.problem;
    things.forEach(({ kind }, t) => {
      const known = this.kindOf.get(kind) ?? this.kinds.push({ things: [], columns: [] }) - 1;
      this.kindOf.set(kind, known);
      this.kinds[known]!.things.push(t);
    });
    for (const { things: alike, columns } of this.kinds) {
      const { model, slot, options } = things[alike[0]!]!;
      const { leftWorks, leftFailed } = models[model]!;
      for (const { chance, costMinor, minutes, needs } of options) {
        // Leftovers are counted here as failed; what works is counted in each outcome.
        const column = this.lp.column(leftFailed[slot]! - costMinor - minutes * this.problem.minuteMinor, 0, Infinity);
        columns.push(column);
        if (minutes > 0) this.hours.push([column, minutes]);
        if (costMinor !== 0) this.money.push([column, costMinor]);
        for (const [part, n] of needs) this.partUse[part]!.push([column, n]);
        void chance;
      }
      const loose = alike.filter((t) => things[t]!.unit < 0).length;
      const units = alike.flatMap((t) => (things[t]!.unit < 0 ? [] : [[this.unitColumn[things[t]!.unit]!, -1] as [number, number]]));
      this.lp.row(loose, loose, [...columns.map((column) => [column, 1] as [number, number]), ...merged(units)]);
      void leftWorks;
    }
  }

  private fillings(): void {
    const { fills, models, minuteMinor } = this.problem;
    for (const { part, model, slot, minutes } of fills) {
      const column = this.lp.column(models[model]!.leftFailed[slot]! - minutes * minuteMinor, 0, models[model]!.units.length + 1);
      this.fillColumn.push(column);
      if (minutes > 0) this.hours.push([column, minutes]);
      this.partUse[part]!.push([column, 1]);
    }
  }

  /** What is used, and lies left over, comes from the drawer and from suppliers; postage in proportion to the share that is used of an order. */
  private purchases(): void {
    const { parts, suppliers, models } = this.problem;
    const posts = suppliers.map(({ postageMinor, waitMinor }) => {
      const column = this.lp.column(-postageMinor - waitMinor, 0, 1);
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
      (sum, { options }) => sum + options.reduce((most, { needs }) => Math.max(most, needs.reduce((n, need) => (need[0] === p ? n + need[1] : n), 0)), 0),
      0,
    );
    return filled + used;
  }

  /** The second stage in one outcome; its row of hours comes out. */
  private outcome(k: number): number {
    const hours: [number, number][] = [...this.hours];
    this.problem.models.forEach((model, m) => hours.push(...this.finishing(model, m, k)));
    return this.lp.row(-Infinity, this.problem.pile.limits.minutes, hours);
  }

  private finishing(model: ModelData, m: number, k: number): [number, number][] {
    const { minuteMinor } = this.problem;
    const share = 1 / this.outcomes;
    const most = Math.max(1, model.units.length + 1);
    const built: number[] = [];
    const steps = model.eachFurther === 1 ? 1 : Math.min(most, OWN_STEPS);
    for (let j = 1; j <= steps; j++)
      built.push(this.lp.column(share * (gainOf(model, minuteMinor, j)), 0, j === steps ? most : 1));
    const originals = model.moreMinor > 0 ? this.lp.column(share * model.moreMinor, 0, most) : -1;
    if (originals >= 0) this.lp.row(-Infinity, 0, [[originals, 1], ...built.map((column) => [column, -1] as [number, number])]);
    model.pools.forEach(({ things, fills }, s) => {
      const { working, own } = this.working(things, fills, k);
      const left = this.lp.column(share * (model.leftWorks[s]! - model.leftFailed[s]!), -Infinity, Infinity);
      this.lp.row(0, 0, [[left, -1], ...working]);
      this.lp.row(-Infinity, 0, [...built.map((column) => [column, 1] as [number, number]), [left, -1]]);
      if (originals >= 0 && model.original.includes(s)) this.lp.row(-Infinity, 0, [[originals, 1], ...own.map(([c, v]) => [c, -v] as [number, number])]);
    });
    void m;
    return built.map((column) => [column, model.buildMinutes]);
  }

  /** What works in one slot in one outcome, as a sum over columns: everything, and without fills and loose things. */
  private working(things: readonly number[], fills: readonly number[], k: number): { working: [number, number][]; own: [number, number][] } {
    const kinds = new Set(things.map((t) => this.kindOf.get(this.problem.things[t]!.kind)!));
    const own: [number, number][] = [];
    for (const kind of kinds) {
      const { things: alike, columns } = this.kinds[kind]!;
      const lucks = alike.map((t) => luckOf(this.seed, this.problem.things[t]!.luck, k));
      this.problem.things[alike[0]!]!.options.forEach(({ chance }, o) => {
        const works = lucks.filter((luck) => luck < chance).length / alike.length;
        if (works > 0) own.push([columns[o]!, works]);
      });
    }
    const filled = fills.map((f): [number, number] => [this.fillColumn[f]!, this.problem.fills[f]!.chance]);
    return { working: [...own, ...filled], own };
  }
}

/** Entries of the same column added up. */
function merged(entries: readonly (readonly [number, number])[]): [number, number][] {
  const sums = new Map<number, number>();
  for (const [column, value] of entries) sums.set(column, (sums.get(column) ?? 0) + value);
  return [...sums];
}
