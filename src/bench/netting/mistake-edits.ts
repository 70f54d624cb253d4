import { componentsOf, refOf, type Change, type Component, type Part } from '../../core/circuit/index.ts';
import type { ModelCircuit } from '../models/index.ts';

/** A single mistake in a netlist, told as what the board has and the drawing does not. */
export type Mistake =
  /** The drawing has a part that the board has not. */
  | { readonly is: 'extra-part'; readonly ref: string; readonly part: string }
  /** The value on the board is so many times that of the drawing. */
  | { readonly is: 'wrong-value'; readonly ref: string; readonly part: string; readonly by: number }
  | { readonly is: 'swapped-pins'; readonly ref: string; readonly nodes: readonly [string, string] }
  /** Something joins two nets that the drawing does not have, of about so many Ω. */
  | { readonly is: 'missing-part'; readonly nodes: readonly [string, string]; readonly ohm: number };

export interface Candidate {
  readonly mistake: Mistake;
  /** Nets at which it is; rails and ground only where it is at nothing else. */
  readonly nets: readonly string[];
  readonly changes: readonly Change[];
}

/** Values are misread by a digit, a decade, or two. */
const FACTORS = [0.001, 0.01, 0.1, 0.21, 0.45, 2.2, 4.7, 10, 100, 1000];
const SET_POINTS = [0.55, 0.75, 1.35, 1.8];
const OHMS = [0.05, 100, 1e3, 1e4, 1e5];
const SWAPS: Partial<Record<Part['kind'], readonly (readonly [number, number])[]>> = {
  D: [[0, 1]],
  Q: [
    [0, 1],
    [1, 2],
    [0, 2],
  ],
  M: [
    [0, 1],
    [1, 2],
    [0, 2],
  ],
};
const BEHAVES: ReadonlySet<Part['kind']> = new Set(['LINREG', 'BOOST', 'BUCK', 'CHARGER']);

/**
 * Mistakes that may be the reason why readings at these nets are odd: parts that touch one of them may be too many, of another value or the wrong way round, two pins
 * of a chip or a connector may be exchanged, and something may be missing from an odd net to ground, to a rail or to another odd net. What is inside a chip is not varied.
 */
export function mistakeEdits({ netlist }: Pick<ModelCircuit, 'netlist'>, rails: ReadonlySet<string>, odd: readonly string[]): Candidate[] {
  const isOdd = new Set(odd);
  const telling = (nodes: readonly string[]): string[] => {
    const own = nodes.filter((node) => node !== '0' && !rails.has(node));
    return own.length > 0 ? own : nodes.filter((node) => node !== '0');
  };
  const touching = componentsOf(netlist).filter(({ nets }) => telling(nets).some((net) => isOdd.has(net)));
  const ofParts = touching.flatMap((component) => [
    ...component.parts.filter((part) => isOwn(component, part)).flatMap((part) => editsOf(part)),
    ...exchanges(component, isOdd, rails),
  ]);
  return [...ofParts, ...joins(odd, rails)].map(({ nodes, ...edit }) => ({ ...edit, nets: telling(nodes) }));
}

type Draft = Omit<Candidate, 'nets'> & { readonly nodes: readonly string[] };

/** A part that stands on the board by itself: the only one of its component, or one contact of a connector. */
const isOwn = ({ parts }: Component, { name }: Part): boolean => parts.length === 1 || !name.includes('.');

function editsOf(part: Part): Draft[] {
  const { name, kind, nodes } = part;
  const [key, ref] = [name.toLowerCase(), refOf(name)];
  if (kind === 'C' || kind === 'V' || kind === 'I' || kind === 'BATTERY') return [];
  const factors = kind === 'R' ? FACTORS : BEHAVES.has(kind) ? SET_POINTS : [];
  return [
    { mistake: { is: 'extra-part', ref, part: name }, nodes, changes: [{ does: 'remove', part: key }] },
    ...factors.map((by): Draft => ({
      mistake: { is: 'wrong-value', ref, part: name, by },
      nodes,
      changes: [{ does: 'scale', part: key, by }],
    })),
    ...(SWAPS[kind] ?? []).flatMap(([a, b]): Draft[] => {
      const pair = [nodes[a]!, nodes[b]!] as const;
      if (pair[0] === pair[1]) return [];
      return [{ mistake: { is: 'swapped-pins', ref, nodes: pair }, nodes: pair, changes: [{ does: 'swap', part: key, pins: [a, b] }] }];
    }),
  ];
}

/** Two nets of a component exchanged, of which one reads oddly and the other too, or is a rail. A part with two pins, or a diode or transistor, has its own swaps. */
function exchanges({ ref, parts, nets }: Component, isOdd: ReadonlySet<string>, rails: ReadonlySet<string>): Draft[] {
  if (nets.length < 3 || (parts.length === 1 && SWAPS[parts[0]!.kind])) return [];
  const names = parts.map(({ name }) => name.toLowerCase());
  return nets.flatMap((a, i) =>
    nets.slice(i + 1).flatMap((b): Draft[] => {
      const [one, other] = [isOdd.has(a), isOdd.has(b)];
      const isLikely = (one && other) || (one && (rails.has(b) || b === '0')) || (other && (rails.has(a) || a === '0'));
      if (!isLikely) return [];
      const nodes = [a, b] as const;
      return [{ mistake: { is: 'swapped-pins', ref, nodes }, nodes, changes: [{ does: 'exchange', parts: names, nodes }] }];
    }),
  );
}

function joins(odd: readonly string[], rails: ReadonlySet<string>): Draft[] {
  return odd.flatMap((a, i) => {
    const others = ['0', ...[...rails].filter((rail) => rail !== a && !odd.includes(rail)), ...odd.slice(i + 1)];
    return others.flatMap((b) =>
      OHMS.map((ohm): Draft => {
        const nodes = [a, b] as const;
        return { mistake: { is: 'missing-part', nodes, ohm }, nodes, changes: [{ does: 'join', nodes, ohm }] };
      }),
    );
  });
}
