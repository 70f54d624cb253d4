import type { Part } from '../netlist/types.ts';
import { JUNCTION_GMIN, thermalVoltage, type Bank, type Conditions, type Loading, type Wiring } from './bank.ts';
import { EntryList } from './entry-list.ts';
import { criticalVoltage, currentPastExp, junctionExp, limitJunction } from './junction.ts';

interface Diode {
  readonly part: number;
  readonly anode: number;
  readonly cathode: number;
  readonly saturation: number;
  readonly nVt: number;
  readonly bv: number;
  readonly ibv: number;
  readonly nbvVt: number;
}

/**
 * Diodes: I = Is·(e^(V/(N·Vt)) − 1), behind RS where it is given; past −BV the breakdown current −IBV·e^(−(V+BV)/(NBV·Vt)) is added.
 * Parameters IS, N, RS, BV, IBV, NBV and area as in the notation; those of charge and temperature have no effect here.
 */
export class Diodes implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly items: Diode[] = [];
  private readonly seriesEntries: EntryList;
  private readonly series: { part: number; siemens: number }[] = [];
  private readonly vt: number;
  private last = new Float64Array(0);
  private saturation = new Float64Array(0);
  private critical = new Float64Array(0);
  private seriesS = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[], temperatureK: number) {
    this.entries = new EntryList(wiring);
    this.seriesEntries = new EntryList(wiring);
    this.vt = thermalVoltage(temperatureK);
    parts.forEach((part, index) => {
      if (part.kind === 'D') this.add(wiring, part, index);
    });
  }

  private add(wiring: Wiring, { nodes, params }: Part, part: number): void {
    const area = params['area'] ?? 1;
    const cathode = wiring.node(nodes[1]!);
    let anode = wiring.node(nodes[0]!);
    const rs = (params['rs'] ?? 0) / area;
    if (rs > 0) {
      const inner = wiring.extra('node');
      this.series.push({ part, siemens: 1 / rs });
      this.seriesEntries.addPair(anode, inner);
      anode = inner;
    }
    this.items.push({
      part,
      anode,
      cathode,
      saturation: (params['is'] ?? 1e-14) * area,
      nVt: (params['n'] ?? 1) * this.vt,
      bv: params['bv'] ?? Infinity,
      ibv: (params['ibv'] ?? 1e-3) * area,
      nbvVt: (params['nbv'] ?? params['n'] ?? 1) * this.vt,
    });
    this.entries.addPair(anode, cathode);
  }

  bind(places: Int32Array): void {
    this.entries.bind(places);
    this.seriesEntries.bind(places);
    this.last = new Float64Array(this.items.length);
    this.saturation = new Float64Array(this.items.length);
    this.critical = new Float64Array(this.items.length);
    this.seriesS = new Float64Array(this.series.length);
  }

  prepare({ scale, removed }: Conditions, x: Float64Array): void {
    for (let i = 0; i < this.items.length; i++) {
      const { part, anode, cathode, saturation, nVt } = this.items[i]!;
      this.last[i] = x[anode]! - x[cathode]!;
      const now = removed[part] ? 0 : saturation * scale[part]!;
      if (now === this.saturation[i]) continue;
      this.saturation[i] = now;
      this.critical[i] = criticalVoltage(nVt, now);
    }
    for (let i = 0; i < this.series.length; i++) {
      const { part, siemens } = this.series[i]!;
      this.seriesS[i] = removed[part] ? 0 : siemens;
    }
  }

  load(into: Loading): void {
    for (let i = 0; i < this.items.length; i++) if (this.saturation[i] !== 0) this.loadOne(i, this.items[i]!, into);
    for (let i = 0; i < this.series.length; i++) addConductance(into.values, this.seriesEntries.places, 4 * i, this.seriesS[i]!);
  }

  private loadOne(i: number, d: Diode, into: Loading): void {
    const { x, values, rhs } = into;
    const saturation = this.saturation[i]!;
    const v = this.limited(i, d, x[d.anode]! - x[d.cathode]!, into);
    const e = junctionExp(v, d.nVt);
    let slope = (saturation * e) / d.nVt;
    let current = saturation * (e - 1) + currentPastExp(v, d.nVt, slope) + JUNCTION_GMIN * v;
    slope += JUNCTION_GMIN;
    if (v < -d.bv + 30 * d.nbvVt) {
      const broken = d.ibv * Math.exp(Math.min(-(v + d.bv) / d.nbvVt, 80));
      current -= broken;
      slope += broken / d.nbvVt;
    }
    addConductance(values, this.entries.places, 4 * i, slope);
    const rest = current - slope * v;
    rhs[d.anode]! -= rest;
    rhs[d.cathode]! += rest;
  }

  /** The voltage to use in this pass: forward by the junction's own law, backward past breakdown by the same law mirrored. */
  private limited(i: number, { nVt, bv, nbvVt, ibv }: Diode, v: number, into: Loading): number {
    const last = this.last[i]!;
    const used =
      v < -bv && Number.isFinite(bv)
        ? -bv - limitJunction(-(v + bv), -(last + bv), nbvVt, criticalVoltage(nbvVt, ibv))
        : limitJunction(v, last, nVt, this.critical[i]!);
    if (Math.abs(used - v) > 1e-9) into.limited = true;
    this.last[i] = used;
    return used;
  }
}

/** Adds a conductance at four places in the order aa, bb, ab, ba. */
export function addConductance(values: Float64Array, places: Int32Array, at: number, siemens: number): void {
  values[places[at]!]! += siemens;
  values[places[at + 1]!]! += siemens;
  values[places[at + 2]!]! -= siemens;
  values[places[at + 3]!]! -= siemens;
}
