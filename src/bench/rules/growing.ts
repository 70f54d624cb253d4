import type { SharedFact } from '../events/index.ts';
import { problemsOfFact, readDraft, withLevel } from '../grow/grown-file.ts';
import { ANY_PLAYER } from '../grow/start-file.ts';
import { fieldText, type ModelProblem } from '../models/index.ts';
import { inModel, itemKnown, modelKnown } from './known.ts';
import { nearest } from './nearest.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

type FactOf<K extends SharedFact['kind']> = Extract<SharedFact, { kind: K }>['body'];

export const modelBegun: Rule<'model-begun'> = (context, { body }) =>
  firstOf(
    () => nameFree(context, body.model_id),
    () => ('copy_of' in body.from ? modelKnown(context, body.from.copy_of, 'body.from.copy_of') : null),
    () => ('answers' in body.from ? modelKnown(context, ANY_PLAYER, 'body.from.answers') : null),
    () => ('file' in body.from ? soundFile(body.from.file) : null),
  );

function nameFree({ models, state }: RuleContext, id: string): Objection | null {
  if (!models.has(id) && !state.grown.has(id) && !state.putAway.has(id)) return null;
  return refuse('id-taken', 'body.model_id', `a model is called "${id}" already; give the new one another name`);
}

function soundFile(file: Readonly<Record<string, unknown>>): Objection | null {
  const read = readDraft(withLevel(file));
  return read.ok ? null : unfit(read.problems[0]!, 'body.from.file');
}

const unfit = ({ path, message }: ModelProblem, field: string): Objection =>
  refuse('fact-does-not-fit', field, `${fieldText(path)} ${message}`);

/** The model grows here: one of the folders is changed in its file, or as a copy. */
function growsHere({ state, models }: RuleContext, id: string): Objection | null {
  if (state.grown.has(id)) return null;
  const folder = models.has(id) ? `"${id}" is a model of the folder and does not grow here` : `no model that grows here is called "${id}"`;
  return refuse('model-not-grown', 'body.model_id', `${folder}; there are ${nearest(id, state.grown.keys())}`);
}

/** Fields of the file that facts must leave alone: what names it, and the sections, which have facts of their own. */
const HEAD = new Set(['name', 'revision', 'about', 'currency', 'prices', 'cell', 'weight_g', 'opening_minutes', 'unknown_rate', 'board']);

export const modelFactSet: Rule<'model-fact-set'> = (context, { body }) =>
  firstOf(
    () => growsHere(context, body.model_id),
    () =>
      body.section !== 'head' || HEAD.has(body.id)
        ? null
        : refuse('fact-does-not-fit', 'body.id', `"${body.id}" is not a field of the head; there are ${nearest(body.id, HEAD)}`),
    () => entryThere(context, body),
    () => holdsTogether(context, body.model_id, { ...body, field: body.field ?? null }, 'body.value'),
  );

function entryThere({ models }: RuleContext, { model_id, section, id, field, value }: FactOf<'model-fact-set'>): Objection | null {
  if (section === 'head' || section === 'circuit' || (field === undefined && value !== null)) return null;
  const names = models.get(model_id)?.file[section].map((entry) => entry.id);
  if (!names || names.includes(id)) return null;
  return refuse('fact-does-not-fit', 'body.id', `${section} has no entry "${id}"; it has ${nearest(id, names)}`);
}

function holdsTogether(
  { models }: RuleContext,
  modelId: string,
  fact: Parameters<typeof problemsOfFact>[1],
  field: string,
): Objection | null {
  const model = models.get(modelId);
  const [problem] = model ? problemsOfFact(model, fact) : [];
  return problem ? unfit(problem, field) : null;
}

export const modelPhotoSet: Rule<'model-photo-set'> = (context, { body }) => growsHere(context, body.model_id);

export const modelPartsPlaced: Rule<'model-parts-placed'> = (context, { body }) =>
  firstOf(
    () => growsHere(context, body.model_id),
    ...body.parts.map(
      ({ block }, index) =>
        () =>
          blockKnown(context, body.model_id, block, `body.parts.${index}.block`),
    ),
  );

function blockKnown({ models }: RuleContext, modelId: string, block: string | undefined, field: string): Objection | null {
  const names = models.get(modelId)?.file.blocks.map(({ id }) => id);
  if (block === undefined || !names || names.includes(block)) return null;
  return refuse('fact-does-not-fit', field, `there is no block "${block}"; there are ${nearest(block, names)}`);
}

export const modelPartsRemoved: Rule<'model-parts-removed'> = (context, { body }) =>
  firstOf(
    () => growsHere(context, body.model_id),
    ...body.refs.map((ref, index) => () => partPlaced(context, body.model_id, ref, `body.refs.${index}`)),
  );

function partPlaced({ state }: RuleContext, modelId: string, ref: string, field: string): Objection | null {
  const { parts } = state.grown.get(modelId)!;
  return parts.has(ref) ? null : refuse('unknown-part', field, `no part is marked as "${ref}"; there are ${nearest(ref, parts.keys())}`);
}

const refOf = (pin: string): string => pin.slice(0, pin.indexOf('.'));

export const modelPinsJoined: Rule<'model-pins-joined'> = (context, { body }) =>
  firstOf(
    () => growsHere(context, body.model_id),
    ...body.pins.map((pin, index) => () => partPlaced(context, body.model_id, refOf(pin), `body.pins.${index}`)),
  );

export const modelNetNamed: Rule<'model-net-named'> = (context, { body }) =>
  firstOf(
    () => growsHere(context, body.model_id),
    () => partPlaced(context, body.model_id, refOf(body.pin), 'body.pin'),
  );

/** A netlist may come before its parts are marked, and with mistakes: the check of the model tells them. */
export const modelNetlistSet: Rule<'model-netlist-set'> = (context, { body }) => growsHere(context, body.model_id);

export const modelReadingTaught: Rule<'model-reading-taught'> = (context, { body }) =>
  firstOf(
    () => growsHere(context, body.model_id),
    () => (body.item_id === undefined ? null : itemKnown(context, body.item_id)),
    () => inModel(context, body.model_id, 'points', body.point, 'body.point'),
    () => modeOf(context, body),
  );

function modeOf({ models }: RuleContext, { model_id, point: id, mode, value }: FactOf<'model-reading-taught'>): Objection | null {
  const point = models.get(model_id)?.file.points.find((each) => each.id === id);
  if (point && point.mode !== mode) return refuse('wrong-mode', 'body.mode', `${point.name} is measured in ${point.mode}, not in ${mode}`);
  if (value !== null || mode === 'ohms' || mode === 'diode') return null;
  return refuse('wrong-mode', 'body.value', `OL says nothing in ${mode}`);
}

export const modelStepRecorded: Rule<'model-step-recorded'> = (context, { body: { model_id: id, step, fasteners } }) =>
  firstOf(
    () => growsHere(context, id),
    () => (fasteners ? holdsTogether(context, id, entry('fasteners', fasteners), 'body.fasteners') : null),
    () => holdsTogether(context, id, entry('steps', step), 'body.step'),
  );

const entry = (section: 'steps' | 'fasteners', { id, ...value }: { readonly id: string }) => ({ section, id, field: null, value });

export const modelFitSeen: Rule<'model-fit-seen'> = (context, { body }) =>
  firstOf(
    () => growsHere(context, body.model_id),
    () => inModel(context, body.model_id, 'slots', body.slot, 'body.slot'),
    () => (body.other_model_id === undefined ? null : modelKnown(context, body.other_model_id, 'body.other_model_id')),
    () => (body.item_id === undefined ? null : itemKnown(context, body.item_id)),
    () =>
      body.other_model_id === undefined && body.part === undefined
        ? refuse('fact-does-not-fit', 'body.part', 'does not say what was tried in the slot: name a part, or another model')
        : null,
  );

export const modelTakenIn: Rule<'model-taken-in'> = (context, { body }) => growsHere(context, body.model_id);

export const modelJudgedAgain: Rule<'model-judged-again'> = (context, { body }) =>
  firstOf(
    () => itemKnown(context, body.item_id),
    () => growsHere(context, body.model_id),
    () => {
      const item = context.state.items.get(body.item_id)!;
      if (item.modelId === body.model_id) return null;
      return refuse('unknown-model', 'body.model_id', `${item.name} is of the model "${item.modelId}", not of "${body.model_id}"`);
    },
  );
