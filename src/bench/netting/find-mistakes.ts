import { compileCircuit, drawBoards, isRegion, refOf } from '../../core/circuit/index.ts';
import { METER_SCALES } from '../../core/diagnosis/index.ts';
import { randomStream } from '../../core/numeric/index.ts';
import { likelyMistakes, oddness, oddReadings, type LikelyMistake, type SuspectNet } from '../../core/netting/index.ts';
import type { BoardPoint } from '../boards/board-knowledge.ts';
import { boardPoints } from '../boards/board-points.ts';
import { lookAt, type Look } from '../boards/look.ts';
import { simulateLooks, type ReadyBoards } from '../boards/simulate-looks.ts';
import { referenceOf, type Model } from '../models/index.ts';
import { mistakeEdits, type Candidate } from './mistake-edits.ts';

/** What good boards read at a point. */
export interface KnownGood {
  readonly point: BoardPoint;
  /** V, Ω or A; null is OL. */
  readonly mean: number | null;
  readonly spread: number;
}

/** A reading of good boards that the netlist does not predict. */
export interface OddReading extends KnownGood {
  /** What it predicts; null is OL. */
  readonly predicted: number | null;
  /** How far off, in spreads of boards, meter and tolerances; infinite where only one of the two is OL. */
  readonly spreads: number;
}

interface Edited extends Candidate {
  readonly predicted: Float64Array;
  readonly weight: number;
}

export interface FoundMistakes {
  /** Readings that could be held against the netlist. */
  readonly compared: number;
  /** The oddest first. */
  readonly odd: readonly OddReading[];
  readonly mistakes: readonly LikelyMistake<Edited>[];
  readonly nets: readonly SuspectNet<Edited>[];
  /** So many mistakes were thought of, of so many. */
  readonly thought: number;
  readonly toThink: number;
}

/** By how much a good board may be off its drawing, in least scatters of the meter's scale. Common practice, no source. */
const TOLERANCE_FLOORS = 2.5;
/** Boards that are drawn to see how far a guess reaches. */
const GUESSED_BOARDS = 12;
/** So many of the oddest nets are looked around. */
const MOST_NETS = 6;
/** Mistakes that are simulated between two questions whether to stop. */
const STEP = 12;

/** What good boards read at the points of the model that its circuit tells of. */
export function knownGoodOf(model: Model): KnownGood[] {
  return boardPoints(model).flatMap((point) => {
    const reference = point.named ? referenceOf(model, point.id, point.mode) : null;
    return reference ? [{ point, mean: reference.mean, spread: reference.spread }] : [];
  });
}

/**
 * Holds the netlist of a model against readings of good boards: which it does not predict, and the single mistakes that would explain them, by how well they explain all
 * readings. Null for a model without a circuit. `shouldStop` ends it with what was thought of so far.
 */
export function findMistakes(
  model: Model,
  known: readonly KnownGood[] = knownGoodOf(model),
  shouldStop: () => boolean = () => false,
): FoundMistakes | null {
  return model.circuit && model.file.circuit ? new MistakeSearch(model, known).run(shouldStop) : null;
}

/** The same for a model that has a circuit, piece by piece: each run goes on where the last one was stopped. */
export class MistakeSearch {
  private readonly ready: ReadyBoards;
  private readonly looks: readonly Look[];
  private readonly asDrawn: Float64Array;
  private readonly question: { readonly readings: Float64Array; readonly spreads: Float64Array; readonly asDrawn: Float64Array };
  private readonly candidates: readonly Candidate[];
  private readonly counts = new Map<string, number>();
  private readonly edits: Edited[] = [];
  private readonly places: readonly number[];

  constructor(
    model: Model,
    private readonly known: readonly KnownGood[] = knownGoodOf(model),
  ) {
    const circuit = model.circuit!;
    this.ready = nominalBoard(model);
    this.looks = known.map(({ point }) => lookAt(point, circuit));
    this.asDrawn = simulateLooks(this.ready, [[]], this.looks);
    this.question = {
      readings: this.scaled(known.map(({ mean }) => mean ?? Infinity)),
      spreads: this.spreads(model),
      asDrawn: this.scaled(this.asDrawn),
    };
    this.places = oddReadings(this.question);
    const rails = new Set(Object.keys(model.file.circuit!.rails));
    this.candidates = mistakeEdits(circuit, rails, oddNets(this.places.map((p) => known[p]!.point)));
    for (const { mistake } of this.candidates) this.counts.set(mistake.is, (this.counts.get(mistake.is) ?? 0) + 1);
  }

  run(shouldStop: () => boolean): FoundMistakes {
    while (this.edits.length < this.candidates.length && !shouldStop()) this.step();
    const { edits, nets } = likelyMistakes({ ...this.question, edits: this.edits });
    const [thought, toThink] = [this.edits.length, this.candidates.length];
    return { compared: this.known.length, odd: this.odd(), mistakes: edits, nets, thought, toThink };
  }

  /** Kinds of mistakes are alike in chance, and so are all of one kind. */
  private step(): void {
    const some = this.candidates.slice(this.edits.length, this.edits.length + STEP);
    const values = simulateLooks(
      this.ready,
      some.map((each) => [each]),
      this.looks,
    );
    const width = this.looks.length;
    some.forEach((each, i) => {
      const predicted = this.scaled(values.subarray(i * width, (i + 1) * width));
      this.edits.push({ ...each, predicted, weight: 1 / this.counts.get(each.mistake.is)! });
    });
  }

  private odd(): OddReading[] {
    const { readings, spreads, asDrawn } = this.question;
    return this.places.map((p) => {
      const predicted = this.asDrawn[p]!;
      const off = oddness(readings[p]!, asDrawn[p]!, spreads[p]!);
      return { ...this.known[p]!, predicted: predicted === Infinity ? null : predicted, spreads: off };
    });
  }

  /** Of boards, meter and tolerances; and of what is only guessed of the board, where something is. */
  private spreads(model: Model): Float64Array {
    const own = Float64Array.from(this.known, spreadOf);
    const { netlist } = model.circuit!;
    if (!netlist.parts.some(({ name }) => isRegion(refOf(name)))) return own;
    const draws = drawBoards(netlist, GUESSED_BOARDS, randomStream(`guessed boards of ${model.file.id}`));
    const values = simulateLooks({ ...this.ready, draws }, [[]], this.looks);
    const width = this.looks.length;
    return own.map((spread, p) => {
      const read = draws.map((_, d) => scaleOf(this.known[p]!.point, values[d * width + p]!)).filter(Number.isFinite);
      return read.length > 1 ? Math.hypot(spread, deviation(read)) : spread;
    });
  }

  private scaled(values: ArrayLike<number>): Float64Array {
    return Float64Array.from(this.known, ({ point }, p) => scaleOf(point, values[p]!));
  }
}

function nominalBoard(model: Model): ReadyBoards {
  const { netlist } = model.circuit!;
  return { model, circuit: compileCircuit(netlist), draws: [{ scale: new Float64Array(netlist.parts.length).fill(1), severity: 0 }] };
}

const scaleOf = ({ mode }: BoardPoint, value: number): number => (Number.isFinite(value) ? METER_SCALES[mode].of(value) : value);

function spreadOf({ point: { mode }, mean, spread }: KnownGood): number {
  const { slope, floor } = METER_SCALES[mode];
  return Math.hypot(mean === null ? 0 : slope(mean) * spread, TOLERANCE_FLOORS * floor);
}

/** Nets at the leads of the oddest readings, each once. */
function oddNets(points: readonly BoardPoint[]): string[] {
  const nets = points.flatMap(({ red, black, supply }) => (supply === undefined ? [red, black] : [])).filter((net) => net !== '0');
  return [...new Set(nets)].slice(0, MOST_NETS);
}

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
