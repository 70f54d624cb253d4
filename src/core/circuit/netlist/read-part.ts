import { splitPairs } from './deck.ts';
import { findModel, valueOf, type Scoped } from './scope.ts';
import { mistake, type BehaviourKind, type Card, type Part, type PrimitiveKind, type Token } from './types.ts';

/** A part with its nodes as they are written where it stands. */
export type LocalPart = Omit<Part, 'name'> & { readonly label: string };

const NODE_COUNT: Readonly<Record<PrimitiveKind, number>> = {
  R: 2,
  C: 2,
  L: 2,
  V: 2,
  I: 2,
  D: 2,
  Q: 3,
  M: 4,
  E: 4,
  G: 4,
  F: 2,
  H: 2,
  S: 4,
  W: 2,
};
const MODEL_TYPES: Partial<Record<PrimitiveKind, readonly string[]>> = {
  D: ['d'],
  Q: ['npn', 'pnp'],
  M: ['nmos', 'pmos'],
  S: ['sw'],
  W: ['csw'],
};

/** Nodes of each behavioural part, in order; the parameters that it must have, and those that it may have with their defaults. */
export const BEHAVIOURS: Readonly<
  Record<BehaviourKind, { nodes: readonly string[]; needs: readonly string[]; may: Readonly<Record<string, number>> }>
> = {
  LINREG: { nodes: ['in', 'out', 'gnd', 'en'], needs: ['vset'], may: { dropout: 0.2, ilimit: 0.3, rout: 0.02, iq: 50e-6, von: 1 } },
  BOOST: {
    nodes: ['in', 'out', 'gnd', 'en'],
    needs: ['vset'],
    may: { eff: 0.85, uvlo: 1.8, ilimit: 1, rout: 0.02, iq: 100e-6, von: 1, vf: 0.35 },
  },
  BUCK: {
    nodes: ['in', 'out', 'gnd', 'en'],
    needs: ['vset'],
    may: { eff: 0.88, uvlo: 2.5, ilimit: 1, rout: 0.02, iq: 100e-6, von: 1, rdrop: 0.2 },
  },
  LOAD: { nodes: ['plus', 'minus'], needs: ['i'], may: { von: 1.5 } },
  CHARGER: { nodes: ['in', 'bat', 'gnd'], needs: ['icc', 'vcv'], may: { vmin: 4, headroom: 0.15, iq: 200e-6, rout: 0.02 } },
  BATTERY: { nodes: ['plus', 'minus'], needs: ['v'], may: { r: 0.1 } },
};

/** Of any part: how far its value spreads from board to board, as the standard deviation of its logarithm. */
const SPREAD = 'spread';

/** Reads one element card. Throws a NetlistMistake. Subcircuit calls are not parts and must not come here. */
export function readPart(card: Card, scope: Scoped): LocalPart {
  const head = card.tokens[0]!;
  const kind = head.text[0]!.toUpperCase();
  if (!Object.hasOwn(NODE_COUNT, kind))
    throw mistake(
      head,
      'unsupported',
      `a part whose name starts with "${head.text[0]}" is not known; there are ${Object.keys(NODE_COUNT).join(' ')} and X`,
    );
  return new PartReader(card, kind as PrimitiveKind, scope).read();
}

class PartReader {
  private readonly head: Token;
  private readonly words: Token[];
  private readonly pairs: Map<string, Token>;
  private readonly nodes: string[];
  private readonly rest: Token[];

  constructor(
    card: Card,
    private readonly kind: PrimitiveKind,
    private readonly scope: Scoped,
  ) {
    this.head = card.tokens[0]!;
    const split = splitPairs(card.tokens.slice(1));
    this.words = split.words;
    this.pairs = split.pairs;
    const count = this.nodeCount();
    if (this.words.length < count)
      throw mistake(this.head, 'nodes', `${this.head.text} needs ${count} nodes, but only ${this.words.length} words follow its name`);
    this.nodes = this.words.slice(0, count).map((token) => token.text.toLowerCase());
    this.rest = this.words.slice(count);
  }

  read(): LocalPart {
    const { kind } = this;
    if (kind === 'R' || kind === 'C' || kind === 'L') return this.passive();
    if (kind === 'V' || kind === 'I') return this.part(this.sourceValue());
    if (kind === 'E' || kind === 'G') return this.part(this.value(0, 'its gain'));
    if (kind === 'F' || kind === 'H')
      return this.part(this.value(1, 'its gain'), { control: this.word(0, 'the voltage source that controls it') });
    if (kind === 'W') return this.modelled(1, { control: this.word(0, 'the voltage source that controls it') });
    return this.modelled(0, {});
  }

  /** A transistor may name its substrate as a fourth node: it is one when a model's name comes after it. */
  private nodeCount(): number {
    const isModel = (token: Token | undefined): boolean =>
      token !== undefined && findModel(token.text.toLowerCase(), this.scope) !== undefined;
    return this.kind === 'Q' && !isModel(this.words[3]) && isModel(this.words[4]) ? 4 : NODE_COUNT[this.kind];
  }

  private passive(): LocalPart {
    const named = { R: 'r', C: 'c', L: 'l' }[this.kind as 'R' | 'C' | 'L'];
    const pair = this.pairs.get(named);
    const value = pair ? valueOf(pair, this.scope.params) : this.value(0, 'its value');
    if (this.kind === 'R' && value === 0)
      throw mistake(this.rest[0] ?? this.head, 'number', `${this.head.text} has no resistance: join its nodes instead, or give it 1m`);
    if (this.kind !== 'R' && value < 0) throw mistake(this.rest[0] ?? this.head, 'number', `${this.head.text} must not be negative`);
    return this.part(value);
  }

  /** The value at rest: after DC, or a bare number, or the first value of PULSE, SIN, EXP or PWL (PWL: its first voltage). */
  private sourceValue(): number {
    const at = this.rest.findIndex((token) => /^dc$/i.test(token.text));
    if (at >= 0) return this.value(at + 1, 'its DC value');
    const first = this.rest[0];
    if (!first) return 0;
    if (/^(pulse|sin|exp)$/i.test(first.text)) return this.value(1, 'its first value');
    if (/^pwl$/i.test(first.text)) return this.value(2, 'its first voltage');
    return /^ac$/i.test(first.text) ? 0 : this.value(0, 'its value');
  }

  private modelled(at: number, more: Partial<LocalPart>): LocalPart {
    const name = this.word(at, 'the name of its model');
    const model = findModel(name, this.scope);
    const token = this.rest[at]!;
    if (!model) throw mistake(token, 'unknown-name', `${this.head.text} names the model "${token.text}", but no .model line defines it`);
    const types = MODEL_TYPES[this.kind]!;
    if (!types.includes(model.type))
      throw mistake(
        token,
        'unknown-name',
        `${this.head.text} needs a model of type ${types.join(' or ')}, but "${token.text}" is of type ${model.type}`,
      );
    const params: Record<string, number> = {};
    for (const [key, value] of model.params) if (/^[{'\d.+-]/.test(value.text)) params[key] = valueOf(value, this.scope.params);
    const area = this.rest[at + 1];
    if (area && this.kind !== 'S' && this.kind !== 'W' && !/^(on|off)$/i.test(area.text)) params['area'] = valueOf(area, this.scope.params);
    return this.part(0, { ...more, type: model.type, params: { ...params, ...this.ownParams() } });
  }

  private ownParams(): Record<string, number> {
    return Object.fromEntries([...this.pairs].map(([key, token]) => [key, valueOf(token, this.scope.params)]));
  }

  private part(value: number, more: Partial<LocalPart> = {}): LocalPart {
    const { line, column, text } = this.head;
    const base = { label: text, kind: this.kind, nodes: this.nodes, value, params: this.ownParams(), type: '', control: '', line, column };
    return { ...base, ...more };
  }

  private word(at: number, what: string): string {
    const token = this.rest[at];
    if (!token) throw mistake(this.head, 'syntax', `${this.head.text} lacks ${what}`);
    return token.text.toLowerCase();
  }

  private value(at: number, what: string): number {
    this.word(at, what);
    return valueOf(this.rest[at]!, this.scope.params);
  }
}

/** Reads an X card that names one of the behavioural parts. Throws a NetlistMistake. */
export function readBehaviour(
  kind: BehaviourKind,
  head: Token,
  nodes: readonly Token[],
  pairs: ReadonlyMap<string, Token>,
  scope: Scoped,
): LocalPart {
  const spec = BEHAVIOURS[kind];
  if (nodes.length !== spec.nodes.length)
    throw mistake(head, 'nodes', `${kind} has ${spec.nodes.length} nodes (${spec.nodes.join(', ')}), got ${nodes.length}`);
  const params: Record<string, number> = { ...spec.may };
  for (const [key, token] of pairs) {
    if (key !== SPREAD && !spec.needs.includes(key) && !Object.hasOwn(spec.may, key))
      throw mistake(
        token,
        'unknown-name',
        `${kind} has no parameter "${key}"; it has ${[...spec.needs, ...Object.keys(spec.may), SPREAD].join(', ')}`,
      );
    params[key] = valueOf(token, scope.params);
  }
  const missing = spec.needs.find((key) => params[key] === undefined);
  if (missing) throw mistake(head, 'syntax', `${head.text} (${kind}) needs ${missing}=…`);
  return {
    label: head.text,
    kind,
    nodes: nodes.map((token) => token.text.toLowerCase()),
    value: 0,
    params,
    type: '',
    control: '',
    line: head.line,
    column: head.column,
  };
}
