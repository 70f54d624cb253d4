import type { Part } from '../netlist/types.ts';
import { JUNCTION_GMIN, thermalVoltage, type Bank, type Conditions, type Loading, type Wiring } from './bank.ts';
import { addConductance } from './diodes.ts';
import { EntryList } from './entry-list.ts';
import { criticalVoltage, currentPastExp, junctionExp, limitJunction } from './junction.ts';

interface Mosfet {
  readonly part: number;
  /** +1 n-channel, −1 p-channel. */
  readonly sign: 1 | -1;
  readonly d: number;
  readonly g: number;
  readonly s: number;
  readonly b: number;
  readonly beta: number;
  readonly vto: number;
  readonly lambda: number;
  readonly gamma: number;
  readonly phi: number;
  readonly is: number;
  /** Critical voltage of its bulk junctions. */
  readonly critical: number;
}

/**
 * Field-effect transistors, level 1: Shichman & Hodges (IEEE J. Solid-State Circuits SC-3, 1968): VTO KP LAMBDA GAMMA PHI, W, L, LD, RD, RS, and
 * the two bulk junctions with IS. Level 2 and above are read as level 1; subthreshold current is left out.
 */
export class Mosfets implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly junctionEntries: EntryList;
  private readonly items: Mosfet[] = [];
  private readonly seriesEntries: EntryList;
  private readonly series: { part: number; siemens: number }[] = [];
  private readonly vt: number;
  /** Last voltage of bulk–drain and bulk–source, two a part. */
  private last = new Float64Array(0);
  private scale = new Float64Array(0);
  private seriesS = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[], temperatureK: number) {
    this.entries = new EntryList(wiring);
    this.junctionEntries = new EntryList(wiring);
    this.seriesEntries = new EntryList(wiring);
    this.vt = thermalVoltage(temperatureK);
    parts.forEach((part, index) => {
      if (part.kind === 'M') this.add(wiring, part, index);
    });
  }

  private add(wiring: Wiring, { nodes, params: p, type }: Part, part: number): void {
    const [d, s] = [
      this.behind(wiring, part, wiring.node(nodes[0]!), p['rd'] ?? 0),
      this.behind(wiring, part, wiring.node(nodes[2]!), p['rs'] ?? 0),
    ];
    const [g, b] = [wiring.node(nodes[1]!), wiring.node(nodes[3]!)];
    const sign = type === 'pmos' ? -1 : 1;
    const length = (p['l'] ?? 1e-4) - 2 * (p['ld'] ?? 0);
    this.items.push({
      part,
      sign,
      d,
      g,
      s,
      b,
      beta: ((p['kp'] ?? 2e-5) * (p['w'] ?? 1e-4)) / length,
      vto: sign * (p['vto'] ?? p['vt0'] ?? 0),
      lambda: p['lambda'] ?? 0,
      gamma: p['gamma'] ?? 0,
      phi: p['phi'] ?? 0.6,
      is: p['is'] ?? 1e-14,
      critical: criticalVoltage(this.vt, p['is'] ?? 1e-14),
    });
    for (const row of [d, s]) for (const col of [d, g, s, b]) this.entries.add(row, col);
    this.junctionEntries.addPair(b, d);
    this.junctionEntries.addPair(b, s);
  }

  private behind(wiring: Wiring, part: number, outer: number, ohm: number): number {
    if (ohm <= 0) return outer;
    const inner = wiring.extra('node');
    this.series.push({ part, siemens: 1 / ohm });
    this.seriesEntries.addPair(outer, inner);
    return inner;
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.junctionEntries.bind(places);
    this.seriesEntries.bind(places);
    this.last = new Float64Array(2 * this.items.length);
    this.scale = new Float64Array(this.items.length);
    this.seriesS = new Float64Array(this.series.length);
  }

  prepare({ scale, removed }: Conditions, x: Float64Array): void {
    for (let i = 0; i < this.items.length; i++) {
      const { part, sign, d, s, b } = this.items[i]!;
      this.last[2 * i] = sign * (x[b]! - x[d]!);
      this.last[2 * i + 1] = sign * (x[b]! - x[s]!);
      this.scale[i] = removed[part] ? 0 : scale[part]!;
    }
    for (let i = 0; i < this.series.length; i++) {
      const { part, siemens } = this.series[i]!;
      this.seriesS[i] = removed[part] ? 0 : siemens;
    }
  }

  load(into: Loading): void {
    for (let i = 0; i < this.items.length; i++) {
      if (this.scale[i] === 0) continue;
      const m = this.items[i]!;
      this.loadJunction(2 * i, m, m.d, into);
      this.loadJunction(2 * i + 1, m, m.s, into);
      this.loadChannel(i, m, into);
    }
    for (let i = 0; i < this.series.length; i++) addConductance(into.values, this.seriesEntries.places, 4 * i, this.seriesS[i]!);
  }

  private loadJunction(at: number, m: Mosfet, other: number, into: Loading): void {
    const { x, rhs } = into;
    const v = m.sign * (x[m.b]! - x[other]!);
    const used = limitJunction(v, this.last[at]!, this.vt, m.critical);
    if (Math.abs(used - v) > 1e-9) into.limited = true;
    this.last[at] = used;
    const e = junctionExp(used, this.vt);
    const bare = (m.is * e) / this.vt;
    const slope = bare + JUNCTION_GMIN;
    const rest = m.sign * (m.is * (e - 1) + currentPastExp(used, this.vt, bare) + JUNCTION_GMIN * used - slope * used);
    addConductance(into.values, this.junctionEntries.places, 4 * at, slope);
    rhs[m.b]! -= rest;
    rhs[other]! += rest;
  }

  private loadChannel(i: number, m: Mosfet, into: Loading): void {
    const { x, values, rhs } = into;
    const forward = m.sign * (x[m.d]! - x[m.s]!) >= 0;
    const source = forward ? m.s : m.d;
    const vds = Math.abs(x[m.d]! - x[m.s]!);
    const vgs = m.sign * (x[m.g]! - x[source]!);
    const vbs = m.sign * (x[m.b]! - x[source]!);
    const rootPhi = Math.sqrt(m.phi);
    const root = vbs <= 0 ? Math.sqrt(m.phi - vbs) : Math.max(rootPhi - vbs / (2 * rootPhi), 0);
    const over = vgs - (m.vto + m.gamma * (root - rootPhi));
    const beta = m.beta * this.scale[i]! * (1 + m.lambda * vds);
    let [ids, gm, gds] = [0, 0, 0];
    if (over > vds) {
      ids = beta * vds * (over - vds / 2);
      gm = beta * vds;
      gds = beta * (over - vds) + m.beta * this.scale[i]! * m.lambda * vds * (over - vds / 2);
    } else if (over > 0) {
      ids = (beta * over * over) / 2;
      gm = beta * over;
      gds = (m.beta * this.scale[i]! * m.lambda * over * over) / 2;
    }
    const gmb = root > 0 ? (gm * m.gamma) / (2 * root) : 0;
    const rest = m.sign * (ids - gds * vds - gm * vgs - gmb * vbs);
    const drain = forward ? m.d : m.s;
    rhs[drain]! -= rest;
    rhs[source]! += rest;
    this.addChannel(values, 8 * i, forward, gds, gm, gmb);
  }

  /** Places in the order dd dg ds db, sd sg ss sb; a channel that runs backwards swaps drain and source in rows and columns. */
  private addChannel(values: Float64Array, at: number, forward: boolean, gds: number, gm: number, gmb: number): void {
    const [drainRow, sourceRow] = forward ? [at, at + 4] : [at + 4, at];
    const [drain, source] = forward ? [0, 2] : [2, 0];
    this.addRow(values, drainRow, drain, source, gds, gm, gmb);
    this.addRow(values, sourceRow, drain, source, -gds, -gm, -gmb);
  }

  private addRow(values: Float64Array, at: number, drain: number, source: number, gds: number, gm: number, gmb: number): void {
    const { places } = this.entries;
    values[places[at + drain]!]! += gds;
    values[places[at + 1]!]! += gm;
    values[places[at + 3]!]! += gmb;
    values[places[at + source]!]! -= gds + gm + gmb;
  }
}
