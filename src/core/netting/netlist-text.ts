import { NettingError } from './netting-error.ts';

/** A part as a netlist has it after its subcircuits are unfolded: `XU1.R3` is R3 inside XU1, whose own nodes begin with `xu1.`. Numbers are SI. */
export interface WrittenPart {
  readonly name: string;
  /** A letter of the notation, or the name of a behavioural part. */
  readonly kind: string;
  readonly nodes: readonly string[];
  readonly value: number;
  readonly params: Readonly<Record<string, number>>;
  /** Type of its model; empty where it has none. */
  readonly type: string;
  /** The voltage source whose current controls it; empty where none does. */
  readonly control: string;
}

export interface WrittenNetlist {
  readonly title: string;
  readonly parts: readonly WrittenPart[];
  readonly temperatureK: number;
}

const USUAL_KELVIN = 300.15;
const LONGEST_LINE = 140;

/**
 * A netlist in the SPICE notation, as docs/netlist-format.md describes it. Parts with a path are gathered into one subcircuit for each instance, models are written
 * once, numbers in full, so that reading the text gives the same parts with the same names, nodes and numbers, in the same order where the parts of an
 * instance stand together. Comments and the subcircuits' own names are not kept. Throws NettingError for a part whose name cannot stand in the notation.
 */
export function netlistText(netlist: WrittenNetlist): string {
  const writer = new Writer();
  const cards = writer.deck(
    netlist.parts.map((part) => ({ part, label: part.name })),
    '',
  );
  const { temperatureK } = netlist;
  const temperature = temperatureK === USUAL_KELVIN ? [] : [`.temp ${Number((temperatureK - 273.15).toPrecision(12))}`];
  const title = netlist.title.replace(/\s+/g, ' ').trim() || 'Netlist';
  return [title, ...temperature, ...writer.models(), ...writer.subcircuits, ...cards, '.end', ''].flatMap(folded).join('\n');
}

/** A part with what is left of its name below the path that is being written. */
interface Placed {
  readonly part: WrittenPart;
  readonly label: string;
}

class Writer {
  readonly subcircuits: string[] = [];
  private readonly modelNames = new Map<string, string>();

  /** Cards of the parts below one path, `XU1.` or empty; inner instances become subcircuits of their own. */
  deck(placed: readonly Placed[], path: string, localOf: (node: string) => string = (node) => node): string[] {
    const inner = new Map<string, Placed[]>();
    const order: (Placed | string)[] = [];
    for (const each of placed) {
      const instance = instanceOf(each);
      if (instance === null) order.push(each);
      else {
        const key = instance.toLowerCase();
        if (!inner.has(key)) order.push(instance);
        inner.set(key, [...(inner.get(key) ?? []), { ...each, label: each.label.slice(instance.length + 1) }]);
      }
    }
    return order.map((each) =>
      typeof each === 'string' ? this.call(each, inner.get(each.toLowerCase())!, path, localOf) : this.card(each, path, localOf),
    );
  }

  models(): string[] {
    return [...this.modelNames].map(([law, name]) => `.model ${name} ${law}`);
  }

  private call(instance: string, placed: readonly Placed[], outer: string, localOf: (node: string) => string): string {
    const path = `${outer}${instance}.`;
    const own = path.toLowerCase();
    const nodes = [...new Set(placed.flatMap(({ part }) => part.nodes))].filter((node) => node !== '0');
    const ports = nodes.filter((node) => !node.startsWith(own));
    const stem = freeStem(nodes.filter((node) => node.startsWith(own)).map((node) => node.slice(own.length)));
    const inside = (node: string): string =>
      node === '0' ? node : node.startsWith(own) ? node.slice(own.length) : `${stem}${ports.indexOf(node) + 1}`;
    const name = `of_${own.slice(0, -1).replaceAll('.', '_')}`;
    const cards = this.deck(placed, path, inside);
    this.subcircuits.push([`.subckt ${name}`, ...ports.map(inside)].join(' '), ...cards, '.ends');
    return [instance, ...ports.map(localOf), name].join(' ');
  }

  private card({ part, label }: Placed, path: string, localOf: (node: string) => string): string {
    const { kind, nodes, value, params, type, control } = part;
    if (!isLabel(label, kind))
      throw new NettingError(
        'not-a-part',
        `"${part.name}" cannot be written as a part of kind ${kind}: its name must begin with ${letterOf(kind)}`,
      );
    const head = [label, ...nodes.map(localOf)];
    const pairs = Object.entries(params).map(([key, number]) => `${key}=${number}`);
    if (kind.length > 1) return [...head, kind, ...pairs].join(' ');
    if (control !== '') head.push(control.slice(path.length));
    if (type !== '') return [...head, this.model(type, pairs)].join(' ');
    return [...head, String(value), ...pairs].join(' ');
  }

  private model(type: string, pairs: readonly string[]): string {
    const law = `${type}(${pairs.join(' ')})`;
    const known = this.modelNames.get(law);
    if (known) return known;
    const name = `m${this.modelNames.size + 1}`;
    this.modelNames.set(law, name);
    return name;
  }
}

const letterOf = (kind: string): string => (kind.length > 1 ? 'X' : kind);

const isLabel = (label: string, kind: string): boolean => label.toUpperCase().startsWith(letterOf(kind)) && !/[\s()=,]/.test(label);

/** The outermost instance of a part, as written; null for a part that is in none. */
function instanceOf({ label }: Placed): string | null {
  const dot = label.indexOf('.');
  return dot > 0 && /^x/i.test(label) ? label.slice(0, dot) : null;
}

/** Names for ports that none of these nodes has. */
function freeStem(taken: readonly string[]): string {
  let stem = 'p';
  while (taken.some((node) => node.startsWith(stem))) stem += 'p';
  return stem;
}

/** A long line goes on behind a "+". */
function folded(line: string): string[] {
  const lines: string[] = [];
  let now = '';
  for (const word of line.split(' ')) {
    if (now !== '' && now.length + word.length >= LONGEST_LINE) {
      lines.push(now);
      now = `+ ${word}`;
    } else now += now === '' ? word : ` ${word}`;
  }
  return [...lines, now];
}
