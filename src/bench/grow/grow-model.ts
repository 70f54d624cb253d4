import type { Body, SharedFact } from '../events/index.ts';
import type {
  FitSeen,
  GrownFact,
  GrownModel,
  GrownPart,
  GrownPhoto,
  NetName,
  PinJoin,
  StepPhoto,
  TaughtReading,
  Told,
} from './grown-model.ts';

type FactOf<K extends SharedFact['kind']> = Extract<SharedFact, { kind: K }>['body'];

/** A model that is being added to: its lists are its own until it is done. */
interface Growing {
  readonly facts: GrownFact[];
  readonly photos: Partial<Record<'front' | 'back', GrownPhoto>>;
  readonly parts: Map<string, GrownPart>;
  readonly joins: PinJoin[];
  readonly names: NetName[];
  netlist: GrownModel['netlist'];
  readonly readings: TaughtReading[];
  readonly stepPhotos: Map<string, StepPhoto>;
  readonly fits: FitSeen[];
}

/** The model with one more fact; `version` is left as it is, for a bundle of facts is one event. */
export const withFact = (grown: GrownModel, fact: SharedFact, told: Told): GrownModel => grow(grown, [fact], () => told);

/** All facts of another's model, each told by its author. */
export function withTakenIn(grown: GrownModel, body: Body<'model-taken-in'>, told: Told): GrownModel {
  const grownOn = grow(grown, body.facts, ({ author }) => ({ ...told, author: author || body.from_author }));
  const taken = { ...told, author: body.from_author, licence: body.licence, facts: body.facts.length };
  return { ...grownOn, taken: [...grownOn.taken, taken] };
}

function grow(grown: GrownModel, facts: readonly SharedFact[], toldBy: (fact: SharedFact) => Told): GrownModel {
  const growing: Growing = {
    facts: [...grown.facts],
    photos: { ...grown.photos },
    parts: new Map(grown.parts),
    joins: [...grown.joins],
    names: [...grown.names],
    netlist: grown.netlist,
    readings: [...grown.readings],
    stepPhotos: new Map(grown.stepPhotos.map((photo) => [photo.step, photo])),
    fits: [...grown.fits],
  };
  for (const fact of facts) add(growing, fact, toldBy(fact));
  return { ...grown, ...growing, stepPhotos: [...growing.stepPhotos.values()] };
}

function add(growing: Growing, fact: SharedFact, told: Told): void {
  switch (fact.kind) {
    case 'model-fact-set':
      return void growing.facts.push(typedFact(fact.body, told));
    case 'model-photo-set': {
      const { side, photo, size, corners, scale, mirror } = fact.body;
      growing.photos[side] = { ...told, photo, size: size ?? null, corners, scale: scale ?? null, mirror };
      return;
    }
    case 'model-parts-placed':
      for (const part of fact.body.parts) growing.parts.set(part.ref, { ...part, ...told });
      return;
    case 'model-parts-removed':
      for (const ref of fact.body.refs) growing.parts.delete(ref);
      return;
    case 'model-pins-joined':
      return void growing.joins.push({ ...told, pins: fact.body.pins, joined: fact.body.joined });
    case 'model-net-named':
      return void growing.names.push({ ...told, pin: fact.body.pin, name: fact.body.name });
    case 'model-netlist-set':
      growing.netlist = { ...told, text: fact.body.text, from: fact.body.from };
      return;
    case 'model-reading-taught':
      return void growing.readings.push(taught(fact.body, told));
    case 'model-step-recorded':
      return addStep(growing, fact.body, told);
    case 'model-fit-seen':
      return void growing.fits.push(seen(fact.body, told));
  }
}

const typedFact = ({ section, id, field, value, source }: FactOf<'model-fact-set'>, told: Told): GrownFact => ({
  ...told,
  section,
  id,
  field: field ?? null,
  value,
  source,
});

const taught = ({ item_id: itemId, model_id: _model, ...reading }: FactOf<'model-reading-taught'>, told: Told): TaughtReading => ({
  ...told,
  ...reading,
  itemId: itemId ?? null,
});

const seen = ({ slot, other_model_id, part, outcome, item_id }: FactOf<'model-fit-seen'>, told: Told): FitSeen => ({
  ...told,
  slot,
  otherModelId: other_model_id ?? null,
  part: part ?? null,
  outcome,
  itemId: item_id ?? null,
});

/** A recorded step is an entry of the file like any other, measured here; its photo stands beside it. */
function addStep({ facts, stepPhotos }: Growing, { step, fasteners, photo, at }: FactOf<'model-step-recorded'>, told: Told): void {
  const note = (section: 'steps' | 'fasteners', { id, ...value }: { readonly id: string }): void =>
    void facts.push({ ...told, section, id, field: null, value, source: 'measured' });
  if (fasteners) note('fasteners', fasteners);
  note('steps', { ...step, ...(fasteners ? { fasteners: fasteners.id } : {}) });
  stepPhotos.delete(step.id);
  if (photo !== undefined || at.length > 0) stepPhotos.set(step.id, { ...told, step: step.id, photo: photo ?? null, places: at });
}
