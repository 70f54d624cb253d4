import type { Body, SharedFact } from '../events/index.ts';
import type { GrownFact, GrownModel, GrownPart, Told } from './grown-model.ts';

/** The model with one more fact; `version` is left as it is, for a bundle of facts is one event. */
export function withFact(grown: GrownModel, fact: SharedFact, told: Told): GrownModel {
  switch (fact.kind) {
    case 'model-fact-set':
      return { ...grown, facts: [...grown.facts, typedFact(fact.body, told)] };
    case 'model-photo-set': {
      const { side, photo, size, corners, scale, mirror } = fact.body;
      const marked = { ...told, photo, size: size ?? null, corners, scale: scale ?? null, mirror };
      return { ...grown, photos: { ...grown.photos, [side]: marked } };
    }
    case 'model-parts-placed':
      return { ...grown, parts: placed(grown.parts, fact.body.parts, told) };
    case 'model-parts-removed':
      return { ...grown, parts: new Map([...grown.parts].filter(([ref]) => !fact.body.refs.includes(ref))) };
    case 'model-pins-joined':
      return { ...grown, joins: [...grown.joins, { ...told, pins: fact.body.pins, joined: fact.body.joined }] };
    case 'model-net-named':
      return { ...grown, names: [...grown.names, { ...told, pin: fact.body.pin, name: fact.body.name }] };
    case 'model-netlist-set':
      return { ...grown, netlist: { ...told, text: fact.body.text, from: fact.body.from } };
    case 'model-reading-taught':
      return { ...grown, readings: [...grown.readings, taught(fact.body, told)] };
    case 'model-step-recorded':
      return withStep(grown, fact.body, told);
    case 'model-fit-seen': {
      const { slot, other_model_id, part, outcome, item_id } = fact.body;
      const seen = { ...told, slot, otherModelId: other_model_id ?? null, part: part ?? null, outcome, itemId: item_id ?? null };
      return { ...grown, fits: [...grown.fits, seen] };
    }
  }
}

/** All facts of another's model, each told by its author. */
export function withTakenIn(grown: GrownModel, body: Body<'model-taken-in'>, told: Told): GrownModel {
  const theirs = { ...told, author: body.from_author };
  const grownOn = body.facts.reduce((model, fact) => withFact(model, fact, { ...told, author: fact.author || body.from_author }), grown);
  return { ...grownOn, taken: [...grownOn.taken, { ...theirs, licence: body.licence, facts: body.facts.length }] };
}

const typedFact = ({ section, id, field, value, source }: Body<'model-fact-set'>, told: Told): GrownFact => ({
  ...told,
  section,
  id,
  field: field ?? null,
  value,
  source,
});

/** A reference that is placed again moves. */
function placed(before: GrownModel['parts'], parts: Body<'model-parts-placed'>['parts'], told: Told): GrownModel['parts'] {
  const after = new Map<string, GrownPart>(before);
  for (const part of parts) after.set(part.ref, { ...part, ...told });
  return after;
}

const taught = ({ board, revision, point, mode, value, item_id: itemId }: Body<'model-reading-taught'>, told: Told) => ({
  ...told,
  board,
  revision,
  point,
  mode,
  value,
  itemId: itemId ?? null,
});

/** A recorded step is an entry of the file like any other, measured here; its photo stands beside it. */
function withStep(grown: GrownModel, { step, fasteners, photo, at }: Body<'model-step-recorded'>, told: Told): GrownModel {
  const facts: GrownFact[] = [...grown.facts];
  const note = (section: 'steps' | 'fasteners', { id, ...value }: { readonly id: string }): void =>
    void facts.push({ ...told, section, id, field: null, value, source: 'measured' });
  if (fasteners) note('fasteners', fasteners);
  note('steps', { ...step, ...(fasteners ? { fasteners: fasteners.id } : {}) });
  const photos = grown.stepPhotos.filter((known) => known.step !== step.id);
  if (photo === undefined && at.length === 0) return { ...grown, facts, stepPhotos: photos };
  return { ...grown, facts, stepPhotos: [...photos, { ...told, step: step.id, photo: photo ?? null, places: at }] };
}
