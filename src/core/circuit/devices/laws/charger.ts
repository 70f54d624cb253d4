import type { BoardLaw, Params } from './board-law.ts';
import { shareInMax, shareInMin, softMax, softMin, softStep } from './rounding.ts';

/** Width of the change from off to on by the input voltage, V. */
const STARTS_WIDTH_V = 0.05;

/** Charger of a cell: nodes in, bat, gnd. The equations are those of docs/netlist-format.md, CHARGER (1) to (4). */
export class Charger implements BoardLaw {
  readonly unknowns = 4;
  readonly ownCurrent = true;
  private readonly icc: number;
  private readonly vcv: number;
  private readonly vmin: number;
  private readonly passOhm: number;
  private readonly iq: number;
  private readonly rout: number;

  constructor(p: Params) {
    this.icc = p['icc']!;
    this.vcv = p['vcv']!;
    this.vmin = p['vmin']!;
    this.passOhm = p['headroom']! / this.icc;
    this.iq = p['iq']!;
    this.rout = p['rout']!;
  }

  evaluate(v: Float64Array, scale: number, out: Float64Array, slope: Float64Array): void {
    const [vi, vb, i] = [v[0]! - v[2]!, v[1]! - v[2]!, v[3]!];
    const on = softStep(vi - this.vmin, STARTS_WIDTH_V);
    const onByIn = (on * (1 - on)) / STARTS_WIDTH_V;
    const set = this.vcv * scale;
    const ohm = set / this.icc;

    const toFull = set - vb - this.rout * i; // (1)
    const toInput = vi - vb - this.passOhm * i; // (2)
    const toLimit = ohm * (this.icc - i); // (3)
    const idle = -ohm * i;
    const voltage = softMin(toFull, toInput);
    const shareFull = shareInMin(toFull, toInput);
    const wanted = softMin(voltage, toLimit);
    const held = softMax(wanted, idle);
    const byVoltage = on * shareInMax(wanted, idle) * shareInMin(voltage, toLimit);

    const own = this.iq * on;
    out[0] = i + own;
    out[1] = -i;
    out[2] = -own;
    out[3] = (1 - on) * idle + on * held; // (4)

    const byIn = byVoltage * (1 - shareFull) + onByIn * (held - idle);
    const byCurrent = -ohm * (1 - byVoltage) - byVoltage * (shareFull * this.rout + (1 - shareFull) * this.passOhm);
    setRow(slope, 0, this.iq * onByIn, 0, 1);
    setRow(slope, 4, 0, 0, -1);
    setRow(slope, 8, -this.iq * onByIn, 0, 0);
    setRow(slope, 12, byIn, -byVoltage, byCurrent);
  }
}

/** One row of slopes for nodes in, bat, gnd and the own current. */
function setRow(slope: Float64Array, at: number, byIn: number, byBat: number, byCurrent: number): void {
  slope[at] = byIn;
  slope[at + 1] = byBat;
  slope[at + 2] = -byIn - byBat;
  slope[at + 3] = byCurrent;
}
