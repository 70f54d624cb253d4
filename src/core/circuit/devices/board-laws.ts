import type { BehaviourKind } from '../netlist/types.ts';

/**
 * Equations of the behavioural parts of boards; docs/formats.md states them for the person who writes a netlist. `v` holds the voltages of the part's
 * nodes in the order of BEHAVIOURS, then its own current I where it has one. `out` takes the current into the part at each node, then the
 * residual that is to vanish, in V. `scale` multiplies the set-point, or the current of a load.
 */
export type BoardLaw = (v: Float64Array, p: Readonly<Record<string, number>>, scale: number, out: Float64Array) => void;

/** Width of the rounding where one limit takes over from another, in V: small beside any rail, wide enough for Newton. */
const ROUNDING_V = 2e-3;

export const softMin = (a: number, b: number): number => (a + b - Math.hypot(a - b, ROUNDING_V)) / 2;
export const softMax = (a: number, b: number): number => (a + b + Math.hypot(a - b, ROUNDING_V)) / 2;

/** 0 well below zero, 1 well above, over a few widths. */
export const softStep = (v: number, widthV: number): number => 1 / (1 + Math.exp(-Math.min(Math.max(v / widthV, -60), 60)));

/** Lowest input voltage that a converter's power balance is computed with, so that an input at 0 V stays finite. */
const FLOOR_V = 0.3;

function linreg(v: Float64Array, p: Readonly<Record<string, number>>, scale: number, out: Float64Array): void {
  const [vi, vo, en, i] = [v[0]! - v[2]!, v[1]! - v[2]!, v[3]! - v[2]!, v[4]!];
  const on = softStep(en - p['von']!, 0.02);
  const set = p['vset']! * scale;
  const ohm = set / p['ilimit']!;
  const regulated = softMin(softMin(set - vo - p['rout']! * i, vi - vo - (p['dropout']! / p['ilimit']!) * i), ohm * (p['ilimit']! - i));
  drawInto(out, i, i, p['iq']! * on * softStep(vi - 1, 0.1), 3);
  out[4] = (1 - on) * -ohm * i + on * softMax(regulated, -ohm * i);
}

function buck(v: Float64Array, p: Readonly<Record<string, number>>, scale: number, out: Float64Array): void {
  const [vi, vo, en, i] = [v[0]! - v[2]!, v[1]! - v[2]!, v[3]! - v[2]!, v[4]!];
  const on = softStep(en - p['von']!, 0.02) * softStep(vi - p['uvlo']!, 0.02);
  const set = p['vset']! * scale;
  const ohm = set / p['ilimit']!;
  const regulated = softMin(softMin(set - vo - p['rout']! * i, vi - vo - p['rdrop']! * i), ohm * (p['ilimit']! - i));
  drawInto(out, i * softMin(vo / (p['eff']! * softMax(vi, FLOOR_V)), 1), i, p['iq']! * on, 3);
  out[4] = (1 - on) * -ohm * i + on * softMax(regulated, -ohm * i);
}

function boost(v: Float64Array, p: Readonly<Record<string, number>>, scale: number, out: Float64Array): void {
  const [vi, vo, en, i] = [v[0]! - v[2]!, v[1]! - v[2]!, v[3]! - v[2]!, v[4]!];
  const on = softStep(en - p['von']!, 0.02) * softStep(vi - p['uvlo']!, 0.02);
  const set = p['vset']! * scale;
  const ohm = set / p['ilimit']!;
  const ratio = 1 + on * (softMax(vo / (p['eff']! * softMax(vi, FLOOR_V)), 1) - 1);
  const through = vi - p['vf']! - vo - 0.1 * i;
  const regulated = softMin(set - vo - p['rout']! * i, ohm * (p['ilimit']! - i * ratio));
  drawInto(out, i * ratio, i, p['iq']! * on, 3);
  out[4] = softMax(on * softMax(regulated, through) + (1 - on) * through, -ohm * i);
}

function charger(v: Float64Array, p: Readonly<Record<string, number>>, scale: number, out: Float64Array): void {
  const [vi, vb, i] = [v[0]! - v[2]!, v[1]! - v[2]!, v[3]!];
  const on = softStep(vi - p['vmin']!, 0.05);
  const set = p['vcv']! * scale;
  const ohm = set / p['icc']!;
  const allowed = softMin(softMin(set - vb - p['rout']! * i, vi - vb - (p['headroom']! / p['icc']!) * i), ohm * (p['icc']! - i));
  drawInto(out, i, i, p['iq']! * on, 2);
  out[3] = (1 - on) * -ohm * i + on * softMax(allowed, -ohm * i);
}

function load(v: Float64Array, p: Readonly<Record<string, number>>, scale: number, out: Float64Array): void {
  const across = v[0]! - v[1]!;
  const current = p['i']! * scale * softStep(across - p['von']!, 0.05) * softStep(across, 0.02);
  out[0] = current;
  out[1] = -current;
}

/** Input, output and ground currents of a part with the nodes in, out, gnd (and en at index 3, which draws nothing). */
function drawInto(out: Float64Array, input: number, output: number, own: number, nodesBeforeEnd: number): void {
  out[0] = input + own;
  out[1] = -output;
  out[2] = output - input - own;
  if (nodesBeforeEnd === 3) out[3] = 0;
}

export const BOARD_LAWS: Readonly<Record<Exclude<BehaviourKind, 'BATTERY'>, { law: BoardLaw; ownCurrent: boolean }>> = {
  LINREG: { law: linreg, ownCurrent: true },
  BUCK: { law: buck, ownCurrent: true },
  BOOST: { law: boost, ownCurrent: true },
  CHARGER: { law: charger, ownCurrent: true },
  LOAD: { law: load, ownCurrent: false },
};
