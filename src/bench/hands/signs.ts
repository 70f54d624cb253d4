import type { FindingKind } from '../events/index.ts';
import type { ModelFile } from '../models/index.ts';
import type { StepSpec } from './teardown-steps.ts';

/** Something that tells of the past of a unit while it is opened, and the finding that it is noted as. Common practice, no source. */
export interface Sign {
  readonly id: string;
  readonly name: string;
  readonly sees: FindingKind;
}

export const SIGNS: readonly Sign[] = [
  { id: 'tamper', name: 'Torn seal, scratched screws or pry marks', sees: 'opened-before' },
  { id: 'previous-solder', name: 'Solder by another hand', sees: 'opened-before' },
  { id: 'liquid-indicator', name: 'Liquid indicator has turned', sees: 'residue' },
  { id: 'residue', name: 'Dried-up residue', sees: 'residue' },
  { id: 'vermin', name: 'Traces of vermin', sees: 'dirty' },
  { id: 'corrosion', name: 'Corrosion', sees: 'corrosion' },
  { id: 'cracked-boss', name: 'Cracked screw boss', sees: 'cracked' },
];

/** Signs that show wherever a fastener comes out. */
const AT_FASTENERS: ReadonlySet<string> = new Set(['tamper', 'cracked-boss']);

/** One thing to look for at a step: where, and what it would be noted as. */
export interface SignHere {
  readonly at: string;
  readonly atName: string;
  readonly sees: FindingKind;
  /** The sign in words; empty where it is just what the finding says. */
  readonly name: string;
}

/** What to look for at a step: what its model names, each with the signs that would be noted so, and what shows wherever fasteners come out. */
export function signsAt(file: ModelFile, step: StepSpec): SignHere[] {
  const named = step.look_for.flatMap(({ at, sees }) => sees.flatMap((each) => signsOf(file, at, each)));
  const set = file.fasteners.find(({ id }) => id === step.fasteners);
  const screws = set
    ? SIGNS.filter(({ id }) => AT_FASTENERS.has(id)).map(({ name, sees }) => ({ at: set.id, atName: set.name, sees, name }))
    : [];
  return [...named, ...screws];
}

function signsOf(file: ModelFile, at: string, sees: FindingKind): SignHere[] {
  const atName = nameIn(file, at);
  const signs = SIGNS.filter(
    (sign) => sign.sees === sees && sign.id !== 'cracked-boss' && (sign.id !== 'previous-solder' || hasJoints(file, at)),
  );
  return signs.length > 0 ? signs.map(({ name }) => ({ at, atName, sees, name })) : [{ at, atName, sees, name: '' }];
}

/** A block that is an assembly by itself, as a shell is, has no joints of its own to look at. */
function hasJoints(file: ModelFile, id: string): boolean {
  const assembly = file.blocks.find((block) => block.id === id)?.assembly;
  return assembly !== undefined && assembly !== id;
}

const nameIn = (file: ModelFile, id: string): string => [...file.blocks, ...file.slots].find((each) => each.id === id)?.name ?? id;
