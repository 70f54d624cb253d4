/**
 * The behavioural parts written a second time, as expression sources of the general simulator: the same equations (docs/netlist-format.md), another
 * reader, another solver. The own current is the voltage of an inner node, tied by a source whose current is the residual.
 */
const W = 4e-3;
const MIN = `.func smin(a,b) {-smax(-(a),-(b))}`;
const MAX = `.func smax(a,b) {abs((a)-(b))>=${W} ? max(a,b) : ((a)+(b))/2+(((a)-(b))*((a)-(b))/${W}+${W})/4}`;
const STEP = '.func st(v,w) {1/(1+exp(-min(max(v/w,-60),60)))}';
export const FUNCTIONS = [MAX, MIN, STEP].join('\n');

/** A node whose voltage is I in A: 1 Ω to ground and a current source that adds the residual, so that at rest the residual is 0. */
const ownCurrent = (id: string, residual: string): string => `Bf_${id} 0 i_${id} I=(${residual})+V(i_${id})\nRf_${id} i_${id} 0 1`;

export interface Regulator {
  readonly id: string;
  readonly input: string;
  readonly output: string;
  readonly enable: string;
}

export function linreg({ id, input, output, enable }: Regulator, p: { vset: number; dropout: number; ilimit: number }): string {
  const ohm = p.vset / p.ilimit;
  const on = `st(V(${enable})-1,0.02)`;
  const i = `V(i_${id})`;
  const regulated = `smin(smin(${p.vset}-V(${output})-0.02*${i},V(${input})-V(${output})-${p.dropout / p.ilimit}*${i}),${ohm}*(${p.ilimit}-${i}))`;
  return [
    ownCurrent(id, `(1-${on})*(-${ohm}*${i})+${on}*smax(${regulated},-${ohm}*${i})`),
    `Bi_${id} ${input} 0 I=${i}+50u*${on}*st(V(${input})-1,0.1)`,
    `Bo_${id} 0 ${output} I=${i}`,
  ].join('\n');
}

export function boost({ id, input, output, enable }: Regulator, p: { vset: number; eff: number; uvlo: number; ilimit: number }): string {
  const ohm = p.vset / p.ilimit;
  const on = `(st(V(${enable})-1,0.02)*st(V(${input})-${p.uvlo},0.02))`;
  const i = `V(i_${id})`;
  const ratio = `(1+${on}*(smax(V(${output})/(${p.eff}*smax(V(${input}),0.3)),1)-1))`;
  const through = `(V(${input})-0.35-V(${output})-0.1*${i})`;
  const regulated = `smin(${p.vset}-V(${output})-0.02*${i},${ohm}*(${p.ilimit}-${i}*${ratio}))`;
  return [
    ownCurrent(id, `smax(${on}*smax(${regulated},${through})+(1-${on})*${through},-${ohm}*${i})`),
    `Bi_${id} ${input} 0 I=${i}*${ratio}+100u*${on}`,
    `Bo_${id} 0 ${output} I=${i}`,
  ].join('\n');
}

export function buck({ id, input, output, enable }: Regulator, p: { vset: number; eff: number; uvlo: number; ilimit: number }): string {
  const ohm = p.vset / p.ilimit;
  const on = `(st(V(${enable})-1,0.02)*st(V(${input})-${p.uvlo},0.02))`;
  const i = `V(i_${id})`;
  const regulated = `smin(smin(${p.vset}-V(${output})-0.02*${i},V(${input})-V(${output})-0.2*${i}),${ohm}*(${p.ilimit}-${i}))`;
  return [
    ownCurrent(id, `(1-${on})*(-${ohm}*${i})+${on}*smax(${regulated},-${ohm}*${i})`),
    `Bi_${id} ${input} 0 I=${i}*smin(V(${output})/(${p.eff}*smax(V(${input}),0.3)),1)+100u*${on}`,
    `Bo_${id} 0 ${output} I=${i}`,
  ].join('\n');
}

export function charger({ id, input, output }: Omit<Regulator, 'enable'>, p: { icc: number; vcv: number }): string {
  const ohm = p.vcv / p.icc;
  const on = `st(V(${input})-4,0.05)`;
  const i = `V(i_${id})`;
  const allowed = `smin(smin(${p.vcv}-V(${output})-0.02*${i},V(${input})-V(${output})-${0.15 / p.icc}*${i}),${ohm}*(${p.icc}-${i}))`;
  return [
    ownCurrent(id, `(1-${on})*(-${ohm}*${i})+${on}*smax(${allowed},-${ohm}*${i})`),
    `Bi_${id} ${input} 0 I=${i}+200u*${on}`,
    `Bo_${id} 0 ${output} I=${i}`,
  ].join('\n');
}

export const load = (id: string, plus: string, ampere: number, von = 1.5): string =>
  `Bl_${id} ${plus} 0 I=${ampere}*st(V(${plus})-${von},0.05)*st(V(${plus}),0.02)`;
