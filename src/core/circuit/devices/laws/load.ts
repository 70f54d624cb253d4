import type { BoardLaw, Params } from './board-law.ts';
import { softStep } from './rounding.ts';

/** Width of the change about the voltage at which a load begins to draw, and about 0 V below which it draws nothing. */
const STARTS_WIDTH_V = 0.05;
const ZERO_WIDTH_V = 0.02;

/** Load that draws a current above a voltage: nodes plus, minus. docs/netlist-format.md, LOAD (1). */
export class Load implements BoardLaw {
  readonly unknowns = 2;
  readonly ownCurrent = false;
  private readonly ampere: number;
  private readonly von: number;

  constructor(p: Params) {
    this.ampere = p['i']!;
    this.von = p['von']!;
  }

  evaluate(v: Float64Array, scale: number, out: Float64Array, slope: Float64Array): void {
    const across = v[0]! - v[1]!;
    const started = softStep(across - this.von, STARTS_WIDTH_V);
    const positive = softStep(across, ZERO_WIDTH_V);
    const current = this.ampere * scale * started * positive; // (1)
    const siemens = current * ((1 - started) / STARTS_WIDTH_V + (1 - positive) / ZERO_WIDTH_V);
    out[0] = current;
    out[1] = -current;
    slope[0] = siemens;
    slope[1] = -siemens;
    slope[2] = -siemens;
    slope[3] = siemens;
  }
}
