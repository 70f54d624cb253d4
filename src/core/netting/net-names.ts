/** What a name of a net says. */
export interface NetName {
  /** As a node of the netlist: lower case, ground is "0". */
  readonly node: string;
  readonly kind: 'ground' | 'supply' | 'signal';
  /** Nominal voltage that the name tells, V. */
  readonly volt: number | null;
}

const GROUND = /^(?:0|0 ?v|gnd|ground|earth|vss|minus)$/;
const BATTERY = /^(?:battery|batt?|cell|bat ?\+|battery ?\+|vbat)$/;
const SUPPLIES = /^v(?:sys|cc|dd|in|out|bus|chg|led|path|core|io|ref)$/;
/** 3.3 V, +5v, 3V3, 1,8 v. */
const VOLTS = /^\+?(\d{1,2})(?:[.,](\d))? ?v$|^\+?(\d{1,2})v(\d)$/;
/** v33 is 3.3 V, v50 is 5.0 V, v120 is 12.0 V: the last digit is the tenth. */
const NODE_VOLTS = /^v(\d{1,2})(\d)$/;

/**
 * The node that a person means by a name: "ground", "battery", "3.3 V" and "+5V" become 0, vbat, v33, v50; anything else keeps its letters, in lower case,
 * with "_" for what a node may not have. Two nets with the same node are one net. Null for a name without a letter or digit.
 */
export function readNetName(text: string): NetName | null {
  const said = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (GROUND.test(said)) return { node: '0', kind: 'ground', volt: 0 };
  if (BATTERY.test(said)) return { node: 'vbat', kind: 'supply', volt: null };
  const [, whole, tenth = '0', before, behind] = VOLTS.exec(said) ?? [];
  const written = whole ?? before;
  if (written !== undefined) return supply(`v${Number(written)}${behind ?? tenth}`);
  const node = said.replace(/[^a-z0-9_.+#-]/g, '_').slice(0, 64);
  if (!/[a-z0-9]/.test(node)) return null;
  const plain = /^[a-z0-9_]/.test(node) ? node : `n${node}`.slice(0, 64);
  if (NODE_VOLTS.test(plain) || SUPPLIES.test(plain)) return supply(plain);
  return { node: plain, kind: 'signal', volt: null };
}

function supply(node: string): NetName {
  const [, whole, tenth] = NODE_VOLTS.exec(node) ?? [];
  return { node, kind: 'supply', volt: whole === undefined ? null : Number(`${whole}.${tenth}`) };
}
