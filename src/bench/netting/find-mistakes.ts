import { compileCircuit } from '../../core/circuit/index.ts';
import { METER_SCALES } from '../../core/diagnosis/index.ts';
import { likelyMistakes, oddness, oddReadings, type LikelyMistake, type SuspectNet } from '../../core/netting/index.ts';
import type { BoardPoint } from '../boards/board-knowledge.ts';
import { boardPoints } from '../boards/board-points.ts';
import { lookAt } from '../boards/look.ts';
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
  /** Points of the readings by their place, as mistakes name them. */
  readonly points: readonly BoardPoint[];
  /** False where it was stopped: not every mistake was thought of. */
  readonly complete: boolean;
}

/** By how much a good board may be off its drawing, in least scatters of the meter's scale. Common practice, no source. */
const TOLERANCE_FLOORS = 2.5;
/** So many of the oddest nets are looked around. */
const MOST_NETS = 6;
const STEP = 40;

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
  const { circuit } = model;
  if (!circuit || !model.file.circuit) return null;
  const ready = nominalBoard(model);
  const looks = known.map(({ point }) => lookAt(point, circuit));
  const scaled = (values: ArrayLike<number>): Float64Array => Float64Array.from(known, ({ point }, p) => scaleOf(point, values[p]!));
  const asDrawn = simulateLooks(ready, [[]], looks);
  const question = {
    readings: scaled(known.map(({ mean }) => mean ?? Infinity)),
    spreads: Float64Array.from(known, spreadOf),
    asDrawn: scaled(asDrawn),
  };
  const places = oddReadings(question);
  const rails = new Set(Object.keys(model.file.circuit.rails));
  const candidates = mistakeEdits(circuit, rails, oddNets(places.map((p) => known[p]!.point)));
  const { edits, complete } = predictAll(
    candidates,
    (some) =>
      simulateLooks(
        ready,
        some.map((each) => [each]),
        looks,
      ),
    scaled,
    shouldStop,
  );
  const odd = places.map((p): OddReading => {
    const predicted = asDrawn[p]!;
    const spreads = oddness(question.readings[p]!, question.asDrawn[p]!, question.spreads[p]!);
    return { ...known[p]!, predicted: predicted === Infinity ? null : predicted, spreads };
  });
  const found = likelyMistakes({ ...question, edits });
  return { compared: known.length, odd, mistakes: found.edits, nets: found.nets, points: known.map(({ point }) => point), complete };
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

/** Kinds of mistakes are alike in chance, and so are all of one kind. */
function predictAll(
  candidates: readonly Candidate[],
  simulate: (some: readonly Candidate[]) => Float64Array,
  scaled: (values: ArrayLike<number>) => Float64Array,
  shouldStop: () => boolean,
): { edits: Edited[]; complete: boolean } {
  const counts = new Map<string, number>();
  for (const { mistake } of candidates) counts.set(mistake.is, (counts.get(mistake.is) ?? 0) + 1);
  const edits: Edited[] = [];
  for (let from = 0; from < candidates.length && !shouldStop(); from += STEP) {
    const some = candidates.slice(from, from + STEP);
    const values = simulate(some);
    const width = values.length / some.length;
    some.forEach((each, i) =>
      edits.push({ ...each, predicted: scaled(values.subarray(i * width, (i + 1) * width)), weight: 1 / counts.get(each.mistake.is)! }),
    );
  }
  return { edits, complete: edits.length === candidates.length };
}
