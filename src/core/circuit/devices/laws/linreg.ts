import { ENABLE_WIDTH_V, type BoardLaw, type Params } from './board-law.ts';
import { shareInMax, shareInMin, softMax, softMin, softStep } from './rounding.ts';

/** Input voltage about which the own consumption sets in, and the width of that change. */
const WAKES_V = 1;
const WAKES_WIDTH_V = 0.1;

/** Linear regulator: nodes in, out, gnd, en. The equations are those of docs/netlist-format.md, LINREG (1) to (4). */
export class Linreg implements BoardLaw {
  readonly unknowns = 5;
  readonly ownCurrent = true;
  private readonly vset: number;
  private readonly ilimit: number;
  private readonly rout: number;
  private readonly passOhm: number;
  private readonly iq: number;
  private readonly von: number;

  constructor(p: Params) {
    this.vset = p['vset']!;
    this.ilimit = p['ilimit']!;
    this.rout = p['rout']!;
    this.passOhm = p['dropout']! / this.ilimit;
    this.iq = p['iq']!;
    this.von = p['von']!;
  }

  evaluate(v: Float64Array, scale: number, out: Float64Array, slope: Float64Array): void {
    const gnd = v[2]!;
    const [vi, vo, en, i] = [v[0]! - gnd, v[1]! - gnd, v[3]! - gnd, v[4]!];
    const on = softStep(en - this.von, ENABLE_WIDTH_V);
    const onSlope = (on * (1 - on)) / ENABLE_WIDTH_V;
    const awake = softStep(vi - WAKES_V, WAKES_WIDTH_V);
    const set = this.vset * scale;
    const ohm = set / this.ilimit;

    const toSet = set - vo - this.rout * i; // (1)
    const toInput = vi - vo - this.passOhm * i; // (2)
    const toLimit = ohm * (this.ilimit - i); // (3)
    const idle = -ohm * i;
    const voltage = softMin(toSet, toInput);
    const shareSet = shareInMin(toSet, toInput);
    const wanted = softMin(voltage, toLimit);
    const shareVoltage = shareInMin(voltage, toLimit);
    const held = softMax(wanted, idle);
    const shareWanted = shareInMax(wanted, idle);
    const byVoltage = on * shareWanted * shareVoltage;

    const own = this.iq * on * awake;
    out[0] = i + own;
    out[1] = -i;
    out[2] = -own;
    out[3] = 0;
    out[4] = (1 - on) * idle + on * held; // (4)

    const ownByIn = (this.iq * on * awake * (1 - awake)) / WAKES_WIDTH_V;
    const ownByEn = this.iq * onSlope * awake;
    const byIn = byVoltage * (1 - shareSet);
    const byEn = onSlope * (held - idle);
    const byCurrent = -ohm * (1 - byVoltage) - byVoltage * (shareSet * this.rout + (1 - shareSet) * this.passOhm);
    slope.fill(0, 0, 25);
    setRow(slope, 0, ownByIn, 0, ownByEn, 1);
    setRow(slope, 5, 0, 0, 0, -1);
    setRow(slope, 10, -ownByIn, 0, -ownByEn, 0);
    setRow(slope, 20, byIn, -byVoltage, byEn, byCurrent);
  }
}

/** One row of slopes for nodes in, out, gnd, en and the own current: what ground takes is what the other nodes do not. */
export function setRow(slope: Float64Array, at: number, byIn: number, byOut: number, byEn: number, byCurrent: number): void {
  slope[at] = byIn;
  slope[at + 1] = byOut;
  slope[at + 2] = -byIn - byOut - byEn;
  slope[at + 3] = byEn;
  slope[at + 4] = byCurrent;
}
