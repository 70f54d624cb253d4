import type { Part } from '../netlist/types.ts';
import { JUNCTION_GMIN, KEEPS_LINE_V, thermalVoltage, type Bank, type Conditions, type Loading, type Wiring } from './bank.ts';
import { addConductance } from './diodes.ts';
import { EntryList } from './entry-list.ts';
import { criticalVoltage, currentPastExp, junctionExp, limitJunction } from './junction.ts';

const LINE_SIZE = 8;

interface Transistor {
  readonly part: number;
  /** +1 npn, −1 pnp. */
  readonly sign: 1 | -1;
  readonly c: number;
  readonly b: number;
  readonly e: number;
  readonly is: number;
  readonly bf: number;
  readonly br: number;
  readonly nfVt: number;
  readonly nrVt: number;
  readonly ise: number;
  readonly neVt: number;
  readonly isc: number;
  readonly ncVt: number;
  readonly perVaf: number;
  readonly perVar: number;
  readonly perIkf: number;
  readonly perIkr: number;
}

/**
 * Bipolar transistors at rest after Gummel & Poon (Bell Syst. Tech. J. 49, 1970) in the form of Nagel, "SPICE2" (1975): IS BF BR NF NR ISE NE ISC NC
 * VAF VAR IKF IKR RB RC RE and area. Base resistance is constant (IRB and RBM have no effect); charge, temperature and substrate are left out.
 */
export class Transistors implements Bank {
  readonly bends = true;
  private readonly entries: EntryList;
  private readonly items: Transistor[] = [];
  private readonly seriesEntries: EntryList;
  private readonly series: { part: number; siemens: number }[] = [];
  private readonly vt: number;
  private lastBe = new Float64Array(0);
  private lastBc = new Float64Array(0);
  private scale = new Float64Array(0);
  /** Critical voltage of base–emitter and base–collector, two a part. */
  private critical = new Float64Array(0);
  private lines = new Float64Array(0);
  private seriesS = new Float64Array(0);

  constructor(wiring: Wiring, parts: readonly Part[], temperatureK: number) {
    this.entries = new EntryList(wiring);
    this.seriesEntries = new EntryList(wiring);
    this.vt = thermalVoltage(temperatureK);
    parts.forEach((part, index) => {
      if (part.kind === 'Q') this.add(wiring, part, index);
    });
  }

  private add(wiring: Wiring, { nodes, params: p, type }: Part, part: number): void {
    const area = p['area'] ?? 1;
    const inner = (node: string, resistance: number | undefined): number =>
      this.behind(wiring, part, wiring.node(node), (resistance ?? 0) / area);
    const [c, b, e] = [inner(nodes[0]!, p['rc']), inner(nodes[1]!, p['rb']), inner(nodes[2]!, p['re'])];
    const per = (value: number | undefined): number => (value ? 1 / value : 0);
    this.items.push({
      part,
      sign: type === 'pnp' ? -1 : 1,
      c,
      b,
      e,
      is: (p['is'] ?? 1e-16) * area,
      bf: p['bf'] ?? 100,
      br: p['br'] ?? 1,
      nfVt: (p['nf'] ?? 1) * this.vt,
      nrVt: (p['nr'] ?? 1) * this.vt,
      ise: (p['ise'] ?? 0) * area,
      neVt: (p['ne'] ?? 1.5) * this.vt,
      isc: (p['isc'] ?? 0) * area,
      ncVt: (p['nc'] ?? 2) * this.vt,
      perVaf: per(p['vaf'] ?? p['va']),
      perVar: per(p['var'] ?? p['vb']),
      perIkf: per(p['ikf'] ?? p['ik']) / area,
      perIkr: per(p['ikr']) / area,
    });
    for (const row of [c, b, e]) for (const col of [c, b, e]) this.entries.add(row, col);
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
    this.seriesEntries.bind(places);
    this.lastBe = new Float64Array(this.items.length);
    this.lastBc = new Float64Array(this.items.length);
    this.scale = new Float64Array(this.items.length);
    this.critical = new Float64Array(2 * this.items.length);
    this.lines = new Float64Array(LINE_SIZE * this.items.length).fill(NaN);
    this.seriesS = new Float64Array(this.series.length);
  }

  prepare({ scale, removed }: Conditions, x: Float64Array): void {
    for (let i = 0; i < this.items.length; i++) {
      const { part, sign, c, b, e, is, nfVt, nrVt } = this.items[i]!;
      this.lastBe[i] = sign * (x[b]! - x[e]!);
      this.lastBc[i] = sign * (x[b]! - x[c]!);
      const now = removed[part] ? 0 : scale[part]!;
      if (now === this.scale[i]) continue;
      this.scale[i] = now;
      this.lines[LINE_SIZE * i] = NaN;
      this.critical[2 * i] = criticalVoltage(nfVt, is * now);
      this.critical[2 * i + 1] = criticalVoltage(nrVt, is * now);
    }
    for (let i = 0; i < this.series.length; i++) {
      const { part, siemens } = this.series[i]!;
      this.seriesS[i] = removed[part] ? 0 : siemens;
    }
  }

  load(into: Loading): void {
    for (let i = 0; i < this.items.length; i++) if (this.scale[i] !== 0) this.loadOne(i, this.items[i]!, into);
    for (let i = 0; i < this.series.length; i++) addConductance(into.values, this.seriesEntries.places, 4 * i, this.seriesS[i]!);
  }

  private loadOne(i: number, q: Transistor, into: Loading): void {
    const { x, rhs } = into;
    const vbe = hold(this.lastBe, i, q.sign * (x[q.b]! - x[q.e]!), q.nfVt, this.critical[2 * i]!, into);
    const vbc = hold(this.lastBc, i, q.sign * (x[q.b]! - x[q.c]!), q.nrVt, this.critical[2 * i + 1]!, into);
    const at = LINE_SIZE * i;
    const { lines } = this;
    const keeps = Math.abs(vbe - lines[at]!) < KEEPS_LINE_V && Math.abs(vbc - lines[at + 1]!) < KEEPS_LINE_V;
    if (!keeps) this.straighten(at, q, q.is * this.scale[i]!, vbe, vbc);
    const [restE, restC] = [lines[at + 6]!, lines[at + 7]!];
    rhs[q.b]! -= restE + restC;
    rhs[q.c]! += restC;
    rhs[q.e]! += restE;
    addNine(into.values, this.entries.places, 9 * i, lines[at + 2]!, lines[at + 3]!, lines[at + 4]!, lines[at + 5]!);
  }

  /** The straight lines through the part at its junction voltages: these, then gπ, gµ, gm, go, then what is left at emitter and collector. */
  private straighten(at: number, q: Transistor, is: number, vbe: number, vbc: number): void {
    const [ebe, ebc] = [junctionExp(vbe, q.nfVt), junctionExp(vbc, q.nrVt)];
    const [gbe, gbc] = [(is * ebe) / q.nfVt, (is * ebc) / q.nrVt];
    const cbe = is * (ebe - 1) + currentPastExp(vbe, q.nfVt, gbe);
    const cbc = is * (ebc - 1) + currentPastExp(vbc, q.nrVt, gbc);
    const q1 = 1 / Math.max(1 - vbc * q.perVaf - vbe * q.perVar, 1e-3);
    const root = Math.sqrt(Math.max(1 + 4 * (cbe * q.perIkf + cbc * q.perIkr), 0));
    const qb = (q1 * (1 + root)) / 2;
    const slopeRoot = Math.max(root, 1e-9);
    const dqbE = q1 * (qb * q.perVar + (q.perIkf * gbe) / slopeRoot);
    const dqbC = q1 * (qb * q.perVaf + (q.perIkr * gbc) / slopeRoot);
    let gpi = gbe / q.bf + JUNCTION_GMIN;
    let gmu = gbc / q.br + JUNCTION_GMIN;
    let currentBe = cbe / q.bf + JUNCTION_GMIN * vbe;
    let currentBc = cbc / q.br + JUNCTION_GMIN * vbc;
    if (q.ise > 0) {
      const leak = junctionExp(vbe, q.neVt);
      gpi += (q.ise * leak) / q.neVt;
      currentBe += q.ise * (leak - 1);
    }
    if (q.isc > 0) {
      const leak = junctionExp(vbc, q.ncVt);
      gmu += (q.isc * leak) / q.ncVt;
      currentBc += q.isc * (leak - 1);
    }
    const transfer = cbe - cbc;
    const go = (gbc + (transfer * dqbC) / qb) / qb;
    const gm = (gbe - (transfer * dqbE) / qb) / qb - go;
    const cc = transfer / qb - currentBc;
    const cb = currentBe + currentBc;
    const { lines } = this;
    lines[at] = vbe;
    lines[at + 1] = vbc;
    lines[at + 2] = gpi;
    lines[at + 3] = gmu;
    lines[at + 4] = gm;
    lines[at + 5] = go;
    lines[at + 6] = q.sign * (cc + cb - vbe * (gm + go + gpi) + vbc * go);
    lines[at + 7] = q.sign * (-cc + vbe * (gm + go) - vbc * (gmu + go));
  }
}

function hold(last: Float64Array, i: number, v: number, nVt: number, critical: number, into: Loading): number {
  const used = limitJunction(v, last[i]!, nVt, critical);
  if (Math.abs(used - v) > 1e-9) into.limited = true;
  last[i] = used;
  return used;
}

/** Places in the order cc cb ce, bc bb be, ec eb ee. */
function addNine(values: Float64Array, places: Int32Array, at: number, gpi: number, gmu: number, gm: number, go: number): void {
  values[places[at]!]! += gmu + go;
  values[places[at + 1]!]! += gm - gmu;
  values[places[at + 2]!]! -= gm + go;
  values[places[at + 3]!]! -= gmu;
  values[places[at + 4]!]! += gpi + gmu;
  values[places[at + 5]!]! -= gpi;
  values[places[at + 6]!]! -= go;
  values[places[at + 7]!]! -= gpi + gm;
  values[places[at + 8]!]! += gpi + gm + go;
}
