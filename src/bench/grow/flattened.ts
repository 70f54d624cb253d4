import type { GrownModel } from './grown-model.ts';

/** Facts that name a model: a copy has its own. */
const NAMING: ReadonlySet<string> = new Set(['name', 'revision', 'currency']);

/** A copy of a grown model as a model that was begun where that one was, with its facts before its own; any other is left as it is. */
export function flattened(grown: GrownModel): GrownModel {
  if (!grown.copied) return grown;
  const base = flattened(grown.copied);
  const taught = new Set(grown.readings.map(({ point }) => point));
  return {
    ...grown,
    from: base.from,
    copied: null,
    facts: [...base.facts.filter(({ section, id }) => section !== 'head' || !NAMING.has(id)), ...grown.facts],
    photos: { ...base.photos, ...grown.photos },
    parts: new Map([...base.parts, ...grown.parts]),
    joins: [...base.joins, ...grown.joins],
    names: [...base.names, ...grown.names],
    netlist: grown.netlist ?? base.netlist,
    readings: [...base.readings.filter(({ point }) => !taught.has(point)), ...grown.readings],
    stepPhotos: [...base.stepPhotos, ...grown.stepPhotos],
    fits: [...base.fits, ...grown.fits],
    taken: [...base.taken, ...grown.taken],
  };
}
