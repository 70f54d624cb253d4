import { ENABLE_WIDTH_V, FLOOR_V, type BoardLaw, type Params } from './board-law.ts';
import { setRow } from './linreg.ts';
import { shareInMax, shareInMin, softMax, softMin, softStep } from './rounding.ts';

/** Step-down converter: nodes in, out, gnd, en. The equations are those of docs/netlist-format.md, BUCK (1) to (5). */
export class Buck implements BoardLaw {
  readonly unknowns = 5;
  readonly ownCurrent = true;
  private readonly vset: number;
  private readonly ilimit: number;
  private readonly rout: number;
  private readonly rdrop: number;
  private readonly eff: number;
  private readonly uvlo: number;
  private readonly iq: number;
  private readonly von: number;

  constructor(p: Params) {
    this.vset = p['vset']!;
    this.ilimit = p['ilimit']!;
    this.rout = p['rout']!;
    this.rdrop = p['rdrop']!;
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

    const toSet = set - vo - this.rout * i; // (1)
    const toInput = vi - vo - this.rdrop * i; // (2)
    const toLimit = ohm * (this.ilimit - i); // (3)
    const idle = -ohm * i;
    const voltage = softMin(toSet, toInput);
    const shareSet = shareInMin(toSet, toInput);
    const wanted = softMin(voltage, toLimit);
    const shareVoltage = shareInMin(voltage, toLimit);
    const held = softMax(wanted, idle);
    const byVoltage = on * shareInMax(wanted, idle) * shareVoltage;

    const floored = softMax(vi, FLOOR_V);
    const power = vo / (this.eff * floored);
    const ratio = softMin(power, 1); // (5)
    const sharePower = shareInMin(power, 1);
    const ratioByOut = sharePower / (this.eff * floored);
    const ratioByIn = (-sharePower * power * shareInMax(vi, FLOOR_V)) / floored;

    const own = this.iq * on;
    out[0] = i * ratio + own;
    out[1] = -i;
    out[2] = i - i * ratio - own;
    out[3] = 0;
    out[4] = (1 - on) * idle + on * held; // (4)

    const difference = held - idle;
    const byIn = byVoltage * (1 - shareSet) + onByIn * difference;
    const byCurrent = -ohm * (1 - byVoltage) - byVoltage * (shareSet * this.rout + (1 - shareSet) * this.rdrop);
    const drawnByIn = i * ratioByIn + this.iq * onByIn;
    slope.fill(0, 0, 25);
    setRow(slope, 0, drawnByIn, i * ratioByOut, this.iq * onByEn, ratio);
    setRow(slope, 5, 0, 0, 0, -1);
    setRow(slope, 10, -drawnByIn, -i * ratioByOut, -this.iq * onByEn, 1 - ratio);
    setRow(slope, 20, byIn, -byVoltage, onByEn * difference, byCurrent);
  }
}
