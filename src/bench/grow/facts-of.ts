import type { SharedFact } from '../events/index.ts';
import type { GrownFact, GrownModel, StepPhoto, Told } from './grown-model.ts';
import { lastWords } from './last-words.ts';

type Bare = SharedFact extends infer F ? (F extends SharedFact ? Omit<F, 'author'> : never) : never;

/** Steps and fasteners that a photo belongs to go out together with it. */
const STEP_FIELDS = ['name', 'tool', 'side', 'after', 'reaches', 'frees', 'minutes', 'how'] as const;

/**
 * Everything that was told of a model, as it counts now, one fact for each place: what was told before and is superseded stays here. Names of items of this bench stay
 * here too.
 */
export function factsOf(grown: GrownModel): SharedFact[] {
  const model_id = grown.id;
  const by = (fact: Bare, { author }: Told): SharedFact => ({ ...fact, author });
  return [
    ...grown.stepPhotos.flatMap((told) => stepOf(grown, told)),
    ...lastWords(grown.facts).map((fact) => by({ kind: 'model-fact-set', body: bodyOf(model_id, fact) }, fact)),
    ...(['front', 'back'] as const).flatMap((side) => {
      const told = grown.photos[side];
      if (!told) return [];
      const { photo, size, corners, scale, mirror } = told;
      const body = { model_id, side, photo, corners, mirror, ...(size ? { size } : {}), ...(scale ? { scale } : {}) };
      return [by({ kind: 'model-photo-set', body }, told)];
    }),
    ...[...grown.parts.values()].map(({ author, at: _at, eventId: _id, ...part }) => ({
      kind: 'model-parts-placed' as const,
      body: { model_id, parts: [part] },
      author,
    })),
    ...grown.joins.map((join) => by({ kind: 'model-pins-joined', body: { model_id, pins: [...join.pins], joined: join.joined } }, join)),
    ...grown.names.map((told) => by({ kind: 'model-net-named', body: { model_id, pin: told.pin, name: told.name } }, told)),
    ...(grown.netlist
      ? [by({ kind: 'model-netlist-set', body: { model_id, text: grown.netlist.text, from: grown.netlist.from } }, grown.netlist)]
      : []),
    ...grown.readings.map((told) => {
      const { board, revision = '', point, mode, value } = told;
      return by({ kind: 'model-reading-taught', body: { model_id, board, revision, point, mode, value } }, told);
    }),
    ...grown.fits.map((told) => {
      const { slot, otherModelId, part, outcome } = told;
      const other = { ...(otherModelId === null ? {} : { other_model_id: otherModelId }), ...(part === null ? {} : { part }) };
      return by({ kind: 'model-fit-seen', body: { model_id, slot, outcome, ...other } }, told);
    }),
  ];
}

const bodyOf = (model_id: string, { section, id, field, value, source }: GrownFact) => ({
  model_id,
  section,
  id,
  value,
  source,
  ...(field === null ? {} : { field }),
});

/** A recorded step with its photo, where the step is still there. It goes first: what the entry says comes after it as a fact, with its fasteners. */
function stepOf({ id: model_id, facts }: GrownModel, told: StepPhoto): SharedFact[] {
  const entry = facts.findLast(({ section, id, field }) => section === 'steps' && id === told.step && field === null);
  if (!entry || entry.value === null) return [];
  const known = entry.value as Record<string, unknown>;
  const fields = Object.fromEntries(STEP_FIELDS.flatMap((name) => (known[name] === undefined ? [] : [[name, known[name]]])));
  const step = { id: told.step, ...fields } as Extract<SharedFact, { kind: 'model-step-recorded' }>['body']['step'];
  const at = told.places.map(([x, y]): [number, number] => [x, y]);
  const body = { model_id, step, at, ...(told.photo === null ? {} : { photo: told.photo }) };
  return [{ kind: 'model-step-recorded', body, author: told.author }];
}
