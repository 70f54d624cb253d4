import { ENABLE_WIDTH_V, FLOOR_V, type BoardLaw, type Params } from './board-law.ts';
import { setRow } from './linreg.ts';
import { shareInMax, shareInMin, softMax, softMin, softStep } from './rounding.ts';

/** Resistance of coil and diode through which the input reaches the output of a boost converter that is off, Ω. */
const THROUGH_OHM = 0.1;

/** Step-up converter: nodes in, out, gnd, en. The equations are those of docs/netlist-format.md, BOOST (1) to (5). */
export class Boost implements BoardLaw {
  readonly unknowns = 5;
  readonly ownCurrent = true;
  private readonly vset: number;
  private readonly ilimit: number;
  private readonly rout: number;
  private readonly vf: number;
  private readonly eff: number;
  private readonly uvlo: number;
  private readonly iq: number;
  private readonly von: number;

  constructor(p: Params) {
    this.vset = p['vset']!;
    this.ilimit = p['ilimit']!;
    this.rout = p['rout']!;
    this.vf = p['vf']!;
    this.eff = p['eff']!;
    this.uvlo = p['uvlo']!;
    this.iq = p['iq']!;
    this.von = p['von']!;
  }

  evaluate(v: Float64Array, scale: number, out: Float64Array, slope: Float64Array): void {
    const gnd = v[2]!;
    const [vi, vo, en, i] = [v[0]! - gnd, v[1]! - gnd, v[3]! - gnd, v[4]!];
    const enabled = softStep(en - this.von, ENABLE_WIDTH_V);
    const fed = softStep(vi - this.uvlo, ENABLE_WIDTH_V);
    const on = enabled * fed;
    const onByEn = (on * (1 - enabled)) / ENABLE_WIDTH_V;
    const onByIn = (on * (1 - fed)) / ENABLE_WIDTH_V;
    const set = this.vset * scale;
    const ohm = set / this.ilimit;

    const floored = softMax(vi, FLOOR_V);
    const power = vo / (this.eff * floored);
    const sharePower = shareInMax(power, 1);
    const raised = softMax(power, 1) - 1;
    const ratio = 1 + on * raised; // (1)
    const ratioByOut = (on * sharePower) / (this.eff * floored);
    const ratioByIn = (-on * sharePower * power * shareInMax(vi, FLOOR_V)) / floored + onByIn * raised;
    const ratioByEn = onByEn * raised;

    const toSet = set - vo - this.rout * i; // (2)
    const toLimit = ohm * (this.ilimit - i * ratio); // (3)
    const through = vi - this.vf - vo - THROUGH_OHM * i; // (4)
    const wanted = softMin(toSet, toLimit);
    const shareSet = shareInMin(toSet, toLimit);
    const driven = softMax(wanted, through);
    const shareWanted = shareInMax(wanted, through);
    const offered = on * driven + (1 - on) * through;
    const idle = -ohm * i;
    const shareOffered = shareInMax(offered, idle);

    const own = this.iq * on;
    out[0] = i * ratio + own;
    out[1] = -i;
    out[2] = i - i * ratio - own;
    out[3] = 0;
    out[4] = softMax(offered, idle); // (5)

    const bySet = shareOffered * on * shareWanted * shareSet;
    const byLimit = -shareOffered * on * shareWanted * (1 - shareSet) * ohm;
    const byThrough = shareOffered * (1 - on * shareWanted);
    const byOn = shareOffered * (driven - through);
    const byIn = byThrough + byLimit * i * ratioByIn + byOn * onByIn;
    const byOut = -bySet - byThrough + byLimit * i * ratioByOut;
    const byEn = byLimit * i * ratioByEn + byOn * onByEn;
    const byCurrent = -bySet * this.rout + byLimit * ratio - byThrough * THROUGH_OHM - (1 - shareOffered) * ohm;
    const drawnByIn = i * ratioByIn + this.iq * onByIn;
    const drawnByEn = i * ratioByEn + this.iq * onByEn;
    slope.fill(0, 0, 25);
    setRow(slope, 0, drawnByIn, i * ratioByOut, drawnByEn, ratio);
    setRow(slope, 5, 0, 0, 0, -1);
    setRow(slope, 10, -drawnByIn, -i * ratioByOut, -drawnByEn, 1 - ratio);
    setRow(slope, 20, byIn, byOut, byEn, byCurrent);
  }
}
