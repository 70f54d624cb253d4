import type { Part } from '../netlist/types.ts';
import { JUNCTION_GMIN, KEEPS_LINE_V, thermalVoltage, type Bank, type Conditions, type Loading, type Wiring } from './bank.ts';
import { EntryList } from './entry-list.ts';
import { criticalVoltage, currentPastExp, junctionExp, limitJunction } from './junction.ts';

/** Steps of the search for the junction's share of a voltage at a new guess. */
const SHARE_STEPS = 12;
/** Volts before breakdown, in NBV·Vt, from which on its current is counted. */
const BREAKDOWN_REACH = 30;

interface Diode {
  readonly part: number;
  readonly anode: number;
  readonly cathode: number;
  readonly saturation: number;
  readonly nVt: number;
  readonly ohm: number;
  readonly bv: number;
  readonly ibv: number;
  readonly nbvVt: number;
  readonly criticalBreakdown: number;
}

/**
 * Diodes: I = Is·(e^(V/(N·Vt)) − 1), behind RS where it is given; past −BV the breakdown current −IBV·e^(−(V+BV)/(NBV·Vt)) is added.
 * Parameters IS, N, RS, BV, IBV, NBV and area as in the notation; those of charge and temperature have no effect here.
 * The node behind RS is not among the unknowns: each step it follows from the straight line of the step before (static condensation), which is
 * what Newton would give it as an unknown.
 */
export class Diodes implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly items: Diode[] = [];
  private readonly vt: number;
  private saturation = new Float64Array(0);
  private critical = new Float64Array(0);
  /** Voltage of each junction, and the straight line through it: current = slope · v + rest. */
  private readonly line: { v: Float64Array; slope: Float64Array; rest: Float64Array };

  constructor(wiring: Wiring, parts: readonly Part[], temperatureK: number) {
    this.entries = new EntryList(wiring);
    this.vt = thermalVoltage(temperatureK);
    parts.forEach((part, index) => {
      if (part.kind === 'D') this.add(wiring, part, index);
    });
    const room = (): Float64Array => new Float64Array(this.items.length);
    this.line = { v: room(), slope: room(), rest: room() };
  }

  private add(wiring: Wiring, { nodes, params }: Part, part: number): void {
    const area = params['area'] ?? 1;
    const [anode, cathode] = [wiring.node(nodes[0]!), wiring.node(nodes[1]!)];
    const ibv = (params['ibv'] ?? 1e-3) * area;
    const nbvVt = (params['nbv'] ?? params['n'] ?? 1) * this.vt;
    this.items.push({
      part,
      anode,
      cathode,
      saturation: (params['is'] ?? 1e-14) * area,
      nVt: (params['n'] ?? 1) * this.vt,
      ohm: (params['rs'] ?? 0) / area,
      bv: params['bv'] ?? Infinity,
      ibv,
      nbvVt,
      criticalBreakdown: criticalVoltage(nbvVt, ibv),
    });
    this.entries.addPair(anode, cathode);
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.saturation = new Float64Array(this.items.length);
    this.critical = new Float64Array(this.items.length);
  }

  prepare({ scale, removed }: Conditions, x: Float64Array): void {
    for (let i = 0; i < this.items.length; i++) {
      const d = this.items[i]!;
      const now = removed[d.part] ? 0 : d.saturation * scale[d.part]!;
      const fresh = now !== this.saturation[i];
      if (fresh) {
        this.saturation[i] = now;
        this.critical[i] = criticalVoltage(d.nVt, now);
      }
      if (now !== 0) this.share(i, d, x[d.anode]! - x[d.cathode]!, fresh);
    }
  }

  /** Finds the junction's share of a voltage across the diode, v + RS·I(v) = across, by Newton from above: no more than across/RS can flow. */
  private share(i: number, d: Diode, across: number, fresh: boolean): void {
    const { v, slope, rest } = this.line;
    if (!fresh && Math.abs(v[i]! + d.ohm * (slope[i]! * v[i]! + rest[i]!) - across) < KEEPS_LINE_V) return;
    const bound = d.ohm > 0 && across > this.critical[i]! ? d.nVt * Math.log1p(across / (d.ohm * this.saturation[i]!)) : across;
    v[i] = Math.min(across, bound);
    for (let step = 0; step < SHARE_STEPS; step++) {
      this.straighten(i, d);
      const move = (across - d.ohm * rest[i]!) / (1 + d.ohm * slope[i]!) - v[i]!;
      if (Math.abs(move) < KEEPS_LINE_V) return;
      v[i]! += move;
    }
    this.straighten(i, d);
  }

  /** The straight line through the junction at its voltage. */
  private straighten(i: number, d: Diode): void {
    const v = this.line.v[i]!;
    const saturation = this.saturation[i]!;
    const e = junctionExp(v, d.nVt);
    let slope = (saturation * e) / d.nVt;
    let current = saturation * (e - 1) + currentPastExp(v, d.nVt, slope) + JUNCTION_GMIN * v;
    slope += JUNCTION_GMIN;
    if (v < -d.bv + BREAKDOWN_REACH * d.nbvVt) {
      const broken = d.ibv * Math.exp(Math.min(-(v + d.bv) / d.nbvVt, 80));
      current -= broken;
      slope += broken / d.nbvVt;
    }
    this.line.slope[i] = slope;
    this.line.rest[i] = current - slope * v;
  }

  load(into: Loading): void {
    for (let i = 0; i < this.items.length; i++) if (this.saturation[i] !== 0) this.loadOne(i, this.items[i]!, into);
  }

  private loadOne(i: number, d: Diode, into: Loading): void {
    const { v, slope, rest } = this.line;
    const across = into.x[d.anode]! - into.x[d.cathode]!;
    const wanted = (across - d.ohm * rest[i]!) / (1 + d.ohm * slope[i]!);
    if (Math.abs(wanted - v[i]!) > KEEPS_LINE_V) {
      const used = this.limited(i, d, wanted);
      if (Math.abs(used - wanted) > 1e-9) into.limited = true;
      v[i] = used;
      this.straighten(i, d);
      const missing = (across - d.ohm * rest[i]!) / (1 + d.ohm * slope[i]!) - used;
      if (Math.abs(missing) > into.settledV) into.limited = true;
    }
    const share = 1 / (1 + d.ohm * slope[i]!);
    addConductance(into.values, this.entries.places, 4 * i, slope[i]! * share);
    into.rhs[d.anode]! -= rest[i]! * share;
    into.rhs[d.cathode]! += rest[i]! * share;
  }

  /** The voltage to use in this pass: forward by the junction's own law, backward past breakdown by the same law mirrored. */
  private limited(i: number, { nVt, bv, nbvVt, criticalBreakdown }: Diode, v: number): number {
    const last = this.line.v[i]!;
    if (v < -bv && Number.isFinite(bv)) return -bv - limitJunction(-(v + bv), -(last + bv), nbvVt, criticalBreakdown);
    return limitJunction(v, last, nVt, this.critical[i]!);
  }
}

/** Adds a conductance at four places in the order aa, bb, ab, ba. */
export function addConductance(values: Float64Array, places: Int32Array, at: number, siemens: number): void {
  values[places[at]!]! += siemens;
  values[places[at + 1]!]! += siemens;
  values[places[at + 2]!]! -= siemens;
  values[places[at + 3]!]! -= siemens;
}
