import type { Part } from '../netlist/types.ts';
import { JUNCTION_GMIN, thermalVoltage, type Bank, type Conditions, type Loading, type Wiring } from './bank.ts';
import { EntryList } from './entry-list.ts';
import { criticalVoltage, junctionCurrent, junctionSlope, limitJunction } from './junction.ts';

/**
 * Diodes: I = Is·(e^(V/(N·Vt)) − 1), behind RS where it is given; past −BV the breakdown current −IBV·e^(−(V+BV)/(NBV·Vt)) is added.
 * Parameters IS, N, RS, BV, IBV, NBV and area as in the notation; those of charge and temperature have no effect here.
 */
export class Diodes implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly items: {
    part: number;
    anode: number;
    cathode: number;
    saturation: number;
    nVt: number;
    bv: number;
    ibv: number;
    nbvVt: number;
  }[] = [];
  private readonly seriesEntries: EntryList;
  private readonly series: { part: number; siemens: number }[] = [];
  private readonly vt: number;
  private last = new Float64Array(0);
  private saturation = new Float64Array(0);
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
    this.seriesS = new Float64Array(this.series.length);
  }

  prepare({ scale, removed }: Conditions, x: Float64Array): void {
    this.items.forEach(({ part, anode, cathode, saturation }, i) => {
      this.last[i] = x[anode]! - x[cathode]!;
      this.saturation[i] = removed[part] ? 0 : saturation * scale[part]!;
    });
    this.series.forEach(({ part, siemens }, i) => (this.seriesS[i] = removed[part] ? 0 : siemens));
  }

  load(into: Loading): void {
    const { x, values, rhs } = into;
    const { places } = this.entries;
    for (let i = 0; i < this.items.length; i++) {
      const item = this.items[i]!;
      const saturation = this.saturation[i]!;
      if (saturation === 0) continue;
      const v = this.limited(i, x[item.anode]! - x[item.cathode]!, into);
      let current = junctionCurrent(v, item.nVt, saturation) + JUNCTION_GMIN * v;
      let slope = junctionSlope(v, item.nVt, saturation) + JUNCTION_GMIN;
      if (v < -item.bv + 30 * item.nbvVt) {
        const broken = item.ibv * Math.exp(Math.min(-(v + item.bv) / item.nbvVt, 80));
        current -= broken;
        slope += broken / item.nbvVt;
      }
      addConductance(values, places, 4 * i, slope);
      const rest = current - slope * v;
      rhs[item.anode]! -= rest;
      rhs[item.cathode]! += rest;
    }
    for (let i = 0; i < this.series.length; i++) addConductance(values, this.seriesEntries.places, 4 * i, this.seriesS[i]!);
  }

  /** The voltage to use in this pass: forward by the junction's own law, backward past breakdown by the same law mirrored. */
  private limited(i: number, v: number, into: Loading): number {
    const { nVt, bv, nbvVt, ibv } = this.items[i]!;
    const last = this.last[i]!;
    const used =
      v < -bv && Number.isFinite(bv)
        ? -bv - limitJunction(-(v + bv), -(last + bv), nbvVt, criticalVoltage(nbvVt, ibv))
        : limitJunction(v, last, nVt, criticalVoltage(nVt, this.saturation[i]!));
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
