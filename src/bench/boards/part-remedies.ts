import { componentsOf, type Role } from '../../core/circuit/index.ts';
import { componentRoles, type BoardPart, type Model, type ModelFile } from '../models/index.ts';
import { effortOf, recipeOfWork, WORK, type WorkOnParts } from './work-on-parts.ts';

type Remedy = ModelFile['remedies'][number];
type Part = ModelFile['parts'][number];

/** A remedy that no model file lists: work on one part of a board, or between two of its nets. */
export interface PartRemedy {
  readonly work: WorkOnParts;
  /** As in a model file, with what it mends still to be filled in. */
  readonly spec: Remedy;
  /** What it uses up, where the model does not list it. */
  readonly uses: Part | null;
  /** The part, as the placement writes it; empty between nets. */
  readonly ref: string;
  readonly nets: readonly string[];
}

/** The remedy on a part; null where that work is not done to such a part, or the part is not on the board. */
export function remedyOnPart(model: Model, verb: WorkOnParts['verb'], ref: string): PartRemedy | null {
  const part = model.circuit?.parts.find((each) => each.ref === ref);
  const role = part && rolesOf(model).get(ref.toLowerCase());
  const effort = part && role && part.side !== 'off' ? effortOf(verb, role) : null;
  if (!part || !effort) return null;
  return remedy(model, verb, ref, [], `${WORDS[verb]} ${ref}${verb === 'replace' && part.value ? ` (${part.value})` : ''}`, effort, part);
}

/** The remedy between two nets: a bridge is cleared, what liquid left is washed off. */
export function remedyBetween(model: Model, verb: 'clear' | 'wash', nets: readonly [string, string]): PartRemedy | null {
  const known = new Set(model.circuit?.netlist.nodes);
  if (!nets.every((net) => net === '0' || known.has(net))) return null;
  const [a, b] = nets.map(netWords);
  return remedy(model, verb, nets.map(written).join('--'), nets, `${WORDS[verb]} between ${a} and ${b}`, effortOf(verb, 'resistor')!, null);
}

/** The remedy against whichever part pulls a net to ground. */
export function remedyOnNet(model: Model, net: string): PartRemedy | null {
  if (!model.circuit?.netlist.nodes.includes(net)) return null;
  return remedy(
    model,
    'trace',
    written(net),
    [net],
    `Find what pulls ${netWords(net)} to ground, and replace it`,
    effortOf('trace', 'resistor')!,
    null,
  );
}

/** The remedy that such a name stands for; null where it is none of this board's. */
export function partRemedyNamed(model: Model, id: string): PartRemedy | null {
  const [verb, target] = [id.slice(0, id.indexOf('.')), id.slice(id.indexOf('.') + 1)];
  const work = WORK.find((each) => each.verb === verb);
  if (!work || !model.circuit) return null;
  if (work.verb === 'trace') return remedyOnNet(model, read(target));
  if (work.verb !== 'clear' && work.verb !== 'wash') return remedyOnPart(model, work.verb, target);
  const nets = target.split('--').map(read);
  return nets.length === 2 ? remedyBetween(model, work.verb, [nets[0]!, nets[1]!]) : null;
}

/** "ground" for "0", else the net as the netlist writes it, in capitals. */
export const netWords = (net: string): string => (net === '0' ? 'ground' : net.toUpperCase());

const WORDS: Readonly<Record<WorkOnParts['verb'], string>> = {
  replace: 'Replace',
  resolder: 'Solder the joints again of',
  clean: 'Clean the contacts of',
  wire: 'Run a wire past the joint of',
  clear: 'Clear the bridge',
  wash: 'Wash off what leaks',
  trace: 'Find what pulls down',
};

const MOST_LETTERS = 64;

function remedy(
  model: Model,
  verb: WorkOnParts['verb'],
  target: string,
  nets: readonly string[],
  name: string,
  effort: NonNullable<ReturnType<typeof effortOf>>,
  part: BoardPart | null,
): PartRemedy | null {
  const id = `${verb}.${target}`;
  if (id.length > MOST_LETTERS || !/^[\w.-]+$/.test(id)) return null;
  const work = WORK.find((each) => each.verb === verb)!;
  const uses = usedUp(model, verb, effort.price, part);
  const recipe = recipeOfWork(verb, (part && rolesOf(model).get(part.ref.toLowerCase())) ?? null);
  const lithium = model.file.cell?.chemistry === 'li-ion';
  const spec: Remedy = {
    id,
    name,
    kind: work.kind,
    mends: {},
    minutes: effort.minutes,
    stage: 'board-out',
    parts: [{ part: uses.id, count: 1 }],
    risk: effort.risk,
    ...(recipe === undefined ? {} : { recipe }),
    cautions: [...(lithium ? (['lithium-cell'] as const) : []), ...work.cautions],
    how: work.how,
  };
  return { work, spec, uses, ref: part?.ref ?? '', nets };
}

/** What the work uses up: the part by value and package, so that parts alike are one in the drawer; else flux, wire or alcohol. */
function usedUp({ file }: Model, verb: WorkOnParts['verb'], share: number, part: BoardPart | null): Part {
  const price = Math.max(1, Math.round(share * file.prices.working));
  if (verb === 'replace' && part) {
    const id = `${part.package}.${part.value || part.ref}`.replace(/[^\w.-]+/g, '_').slice(0, MOST_LETTERS);
    return { id, name: `${part.value || part.ref}, ${part.package}`, price };
  }
  const [id, name] =
    verb === 'wire'
      ? ['wire', 'Insulated wire']
      : verb === 'resolder' || verb === 'clear' || verb === 'trace'
        ? ['flux', 'Flux']
        : ['cleaning', 'Alcohol and swabs'];
  return file.parts.find((known) => known.id === id) ?? { id, name, price };
}

/** A net in the letters of a name: what they lack is written as a dot and two digits of its code. */
const written = (net: string): string =>
  net.replace(/[^A-Za-z0-9_]/g, (letter) => `.${letter.charCodeAt(0).toString(16).padStart(2, '0')}`);
const read = (text: string): string => text.replace(/\.([0-9a-f]{2})/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)));

const roles = new WeakMap<NonNullable<Model['circuit']>, ReadonlyMap<string, Role>>();

/** Roles by lower-case reference. */
export function rolesOf({ circuit }: Model): ReadonlyMap<string, Role> {
  if (!circuit) return new Map();
  const known = roles.get(circuit);
  if (known) return known;
  const byPackage = componentRoles(circuit);
  const made = new Map(componentsOf(circuit.netlist, (ref) => byPackage.get(ref)).map(({ ref, role }) => [ref, role]));
  roles.set(circuit, made);
  return made;
}
