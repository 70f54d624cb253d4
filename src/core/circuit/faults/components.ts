import type { Netlist, Part } from '../netlist/types.ts';

/** What a component is to the person who mends it: which faults it can have follows from this. */
export type Role =
  | 'resistor'
  | 'capacitor'
  | 'coil'
  | 'bead'
  | 'fuse'
  | 'diode'
  | 'transistor'
  | 'regulator'
  | 'charger'
  | 'battery'
  | 'chip'
  | 'speaker'
  | 'contact'
  | 'key'
  | 'source'
  | 'region';

/** A thing on the board: one part of the netlist, or all parts of a subcircuit, or all contacts of a connector. */
export interface Component {
  /** Its name on the board, lower case: `r12`, `u3`, `j1`. */
  readonly ref: string;
  readonly role: Role;
  readonly parts: readonly Part[];
  /** Nodes at which it meets the rest of the board, ground among them; those inside a subcircuit are left out. */
  readonly nets: readonly string[];
}

/** A contact of more than this, Ω, is a key that nobody presses. */
const OPEN_KEY_OHM = 1e5;

/**
 * The components of a netlist, in its order. The notation demands that the first letter tells the kind of part, so `RFB1` is the bead FB1
 * and `XU3` the chip U3: a first letter before another letter is not part of the name. What follows a dot (inside a subcircuit) or an underscore
 * (a contact of a connector, as in `RJ1_4`) is not part of it either. `roleOf` may decide otherwise than the letters do (IEEE 315, from memory).
 */
export function componentsOf(netlist: Netlist, roleOf: (ref: string) => Role | undefined = () => undefined): Component[] {
  const groups = new Map<string, Part[]>();
  for (const part of netlist.parts) {
    const ref = refOf(part.name);
    groups.set(ref, [...(groups.get(ref) ?? []), part]);
  }
  const users = new Map<string, Set<string>>();
  for (const [ref, parts] of groups)
    for (const node of parts.flatMap(({ nodes }) => nodes)) users.set(node, (users.get(node) ?? new Set()).add(ref));
  return [...groups].map(([ref, parts]) => {
    const all = [...new Set(parts.flatMap(({ nodes }) => nodes))];
    return {
      ref,
      role: roleOf(ref) ?? roleByLetters(ref, parts),
      parts,
      nets: all.filter((node) => node === '0' || users.get(node)!.size > 1),
    };
  });
}

/** The name on the board of a part of the netlist. */
export function refOf(partName: string): string {
  const head = partName.toLowerCase().split(/[._]/, 1)[0]!;
  return /^[a-z]{2}/.test(head) ? head.slice(1) : head;
}

/** Whether a component stands for what hangs on a rail and is not drawn: of it only what it does to the rail is known. */
export const isRegion = (ref: string): boolean => /^rest\d/i.test(ref);

const BY_LETTERS: Readonly<Record<string, Role>> = {
  j: 'contact',
  p: 'contact',
  cn: 'contact',
  s: 'contact',
  sw: 'contact',
  rv: 'contact',
  k: 'contact',
  f: 'fuse',
  fb: 'bead',
  ls: 'speaker',
  bt: 'battery',
  u: 'chip',
  ic: 'chip',
  rest: 'region',
};

const BY_KIND: Partial<Record<Part['kind'], Role>> = {
  R: 'resistor',
  C: 'capacitor',
  L: 'coil',
  D: 'diode',
  Q: 'transistor',
  M: 'transistor',
  LINREG: 'regulator',
  BOOST: 'regulator',
  BUCK: 'regulator',
  CHARGER: 'charger',
  BATTERY: 'battery',
  LOAD: 'chip',
  V: 'source',
  I: 'source',
};

function roleByLetters(ref: string, parts: readonly Part[]): Role {
  const [first] = parts;
  const named = BY_LETTERS[/^[a-z]+/.exec(ref)?.[0] ?? ''];
  if (named === 'contact') return parts.every(({ kind, value }) => kind === 'R' && value > OPEN_KEY_OHM) ? 'key' : 'contact';
  if (!parts.every(({ kind }) => kind === first!.kind)) return named ?? 'chip';
  const byKind = BY_KIND[first!.kind];
  // Letters go before R only: a fuse, a bead and a speaker are written as one, but no diode is a fuse.
  return first!.kind === 'R' ? (named ?? 'resistor') : (byKind ?? named ?? 'chip');
}
