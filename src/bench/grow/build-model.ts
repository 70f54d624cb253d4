import type { Model, ModelFile } from '../models/index.ts';
import { withDerivedShifts } from './derived-shifts.ts';
import { grownFile, type LeftOut } from './grown-file.ts';
import { grownCircuit } from './grown-circuit.ts';
import type { GrownModel } from './grown-model.ts';
import { ANY_PLAYER, startFile } from './start-file.ts';
import { readShape } from '../models/shape.ts';

/** A grown model made ready for use, and what of it is not in use. */
export interface BuiltModel {
  readonly model: Model;
  readonly leftOut: readonly LeftOut[];
  /** Why its netlist and parts make no circuit, or some part is not laid out on it; else none. */
  readonly circuitProblems: readonly string[];
}

/** What a model was begun from, as a whole model. */
type Base = Pick<Model, 'file' | 'readings' | 'photos' | 'circuit'>;

/** The models of the folders, from which grown ones may be begun. */
export type Shelf = ReadonlyMap<string, Model>;

const built = new WeakMap<GrownModel, { readonly shelf: Shelf; readonly made: BuiltModel | null }>();

/** The grown model as an ordinary one. Null where what it was begun from is not here any more. Made once for each version. */
export function buildModel(grown: GrownModel, shelf: Shelf): BuiltModel | null {
  const known = built.get(grown);
  if (known?.shelf === shelf) return known.made;
  const base = baseOf(grown, shelf);
  const made = base && buildOn(grown, base);
  built.set(grown, { shelf, made });
  return made;
}

/** What the grown model inherits; null where it is not here. */
function baseOf({ from, copied }: GrownModel, shelf: Shelf): Base | null {
  if (copied) return buildModel(copied, shelf)?.model ?? null;
  if ('copy_of' in from) return shelf.get(from.copy_of) ?? null;
  if ('answers' in from) {
    const file = shelf.get(ANY_PLAYER)?.file;
    return file ? { file: startFile(file, from.answers), readings: [], photos: [] } : null;
  }
  const shape = readShape(from.file);
  return shape.ok ? { file: shape.file, readings: [], photos: [] } : null;
}

function buildOn(grown: GrownModel, base: Base): BuiltModel | null {
  const made = grownFile(grown, base.file);
  if (!made) return null;
  const { leftOut } = made;
  const { circuit, file: filled, problems } = grownCircuit(grown, made.file, base.circuit);
  const readings = readingsOf(grown, base, made.file);
  const file = atLevel(filled, circuit !== undefined, readings.length > 0);
  const photos = photosOf(grown, base);
  const circuits = { ...(circuit ? { circuit } : {}), ...(!circuit && made.file.circuit ? { draftCircuit: made.file.circuit } : {}) };
  const model: Model = { file, version: grown.version, readings, photos, ...circuits };
  return { model, leftOut, circuitProblems: problems };
}

/** Without a circuit that can be used the section that speaks of it is left out, as it is where a netlist of the folder cannot be read. */
function atLevel(file: ModelFile, hasCircuit: boolean, hasReadings: boolean): ModelFile {
  if (hasCircuit) return { ...file, level: 2 };
  const { circuit: _unused, ...rest } = file;
  return withDerivedShifts({ ...rest, level: hasReadings ? 1 : 0 });
}

/** Own readings of a point take the place of inherited ones; what is of no point of the file is not in use. */
function readingsOf(grown: GrownModel, base: Base, file: ModelFile): Model['readings'] {
  const modes = new Map(file.points.map(({ id, mode }) => [id, mode]));
  const own = grown.readings.filter(({ point, mode }) => modes.get(point) === mode);
  const taught = new Set(own.map(({ point }) => point));
  const inherited = base.readings.filter(({ point, mode }) => modes.get(point) === mode && !taught.has(point));
  return [...inherited, ...own.map(({ board, point, mode, value, revision }) => ({ board, point, mode, value, revision }))];
}

/** Own photos take the place of inherited ones of the same side. */
function photosOf({ photos }: GrownModel, base: Base): Model['photos'] {
  const own = (['front', 'back'] as const).flatMap((side) => {
    const photo = photos[side]?.photo;
    return photo === undefined ? [] : [{ side: `board-${side}`, hash: photo }];
  });
  return [...base.photos.filter(({ side }) => !own.some((photo) => photo.side === side)), ...own];
}
