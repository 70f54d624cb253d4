import { packedG, postageOf } from '../market/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import type { ListingTextView } from '../views/index.ts';
import { PROOF_OF_FUNCTION } from '../advice/evidence.ts';
import { keptAndReplaced, type KeptAndReplaced } from './kept-and-replaced.ts';

/** A fact that may be said of a unit, with the events that bear it out. */
interface Fact {
  readonly text: string;
  readonly events: readonly string[];
}

export const PLACES = ['model', 'condition', 'works', 'faults', 'not_tested', 'work', 'replaced', 'cell'] as const;
type Place = (typeof PLACES)[number];

const NO_FACT: Fact = { text: '', events: [] };

/**
 * The text of a listing from what is on file, in the person's own words: each place of the template is filled with what events bear out, or left empty.
 * What was replaced, signed off or is known to be wrong is always said: where the template has no place for it, it stands at the end.
 */
export function listingText(state: Readonly<BenchState>, model: Model, item: Item): ListingTextView {
  const facts = factsOf(state, model, item);
  const owed = (['replaced', 'faults'] as const).filter((place) => facts[place].text !== '' && !state.saleText.includes(`{${place}}`));
  const whole = [state.saleText, ...owed.map((place) => `{${place}}`)].join('\n');
  const text = whole
    .split('\n')
    .flatMap((line) => {
      const filled = line.replaceAll(/\{(\w+)\}/g, (all, name: string) => (isPlace(name) ? facts[name].text : all)).trim();
      return filled === '' && line.trim() !== '' ? [] : [filled];
    })
    .filter((line, i, lines) => line !== '' || (lines[i - 1] ?? '') !== '')
    .join('\n')
    .trim();
  const packed = packedG(model);
  const used = PLACES.filter((place) => facts[place].text !== '' && whole.includes(`{${place}}`));
  return {
    text,
    facts: used.map((place) => ({ text: facts[place].text, event_ids: [...facts[place].events] })),
    template: state.saleText,
    places: PLACES.map((place) => ({ place, text: facts[place].text })),
    own_claims: ownClaims(state.saleText),
    photos: item.photos.map(({ hash, side, caption }) => ({ hash, side, caption })),
    photos_missing: PHOTO_SET.filter((side) => !item.photos.some((photo) => photo.side === side)),
    weight_g: packed === null ? null : { unit: model.file.weight_g!, packed },
    postage_minor: postageOf(state, model),
    currency: state.settings.currency,
    cautions: model.file.cell?.chemistry === 'li-ion' ? [LITHIUM_POST] : [],
  };
}

/** Sides that a buyer wants to see. Common practice, no source. */
const PHOTO_SET = ['front', 'back'] as const;

/** Words that claim something of a thing. In the own words they stand for every unit, whatever is on file of it. */
const CLAIMS =
  /\b(?:works|working|tested|original|genuine|mint|perfect|flawless|like new|refurbished|new (?:battery|cell|screen|display|shell))\b/gi;

/** Such words outside of the places of the template, each once, in small letters. */
const ownClaims = (template: string): string[] => [
  ...new Set([...template.replaceAll(/\{\w*\}/g, ' ').matchAll(CLAIMS)].map(([words]) => words.toLowerCase())),
];

/** What sending a lithium cell in a device asks for. */
export const LITHIUM_POST =
  'It holds a lithium cell: post it only charged in part, switched off and kept from being switched on, well packed, and as your carrier asks for cells in equipment (UN 3481). ' +
  'A swollen, damaged or hot cell is not posted at all.';

const isPlace = (name: string): name is Place => (PLACES as readonly string[]).includes(name);

function factsOf(state: Readonly<BenchState>, model: Model, item: Item): Readonly<Record<Place, Fact>> {
  const { file } = model;
  const kept = keptAndReplaced(state, model, item);
  const passed = file.functions.filter(({ id }) => item.proof.get(stepOf(id))?.outcome === 'pass');
  const open = file.functions.filter(({ id }) => !item.proof.has(stepOf(id)));
  const excepted = [...item.proof].filter(([, { outcome }]) => outcome !== 'pass');
  const provedBy = (ids: readonly string[]): string[] => ids.map((id) => item.proof.get(stepOf(id))!.eventId);
  return {
    model: { text: file.name, events: [] },
    condition: { text: item.grade ? item.grade.grade : 'not graded', events: [] },
    works: sentence(
      passed.map(({ name }) => name),
      'Tested and working: ',
      provedBy(passed.map(({ id }) => id)),
    ),
    not_tested: sentence(
      open.map(({ name }) => name),
      'Not tested: ',
      [],
    ),
    faults: sentence(
      excepted.map(([id, { reason }]) => `${stepName(model, id)}${reason === '' ? '' : ` (${reason})`}`),
      'Does not pass: ',
      excepted.map(([, { eventId }]) => eventId),
    ),
    work: sentence(
      [...new Set(kept.work.map(({ name }) => name))],
      'Work done: ',
      kept.work.map(({ eventId }) => eventId),
    ),
    replaced: replaced(kept, item),
    cell: file.cell ? { text: `Power: ${file.cell.volts} V, ${file.cell.chemistry}.`, events: [] } : NO_FACT,
  };
}

const stepOf = (functionId: string): string => `${PROOF_OF_FUNCTION}${functionId}`.slice(0, 64);
const stepName = ({ file }: Model, step: string): string =>
  file.functions.find(({ id }) => stepOf(id) === step)?.name ?? step.replaceAll('-', ' ');

const sentence = (things: readonly string[], lead: string, events: readonly string[]): Fact =>
  things.length === 0 ? NO_FACT : { text: `${lead}${things.join(', ')}.`, events };

/** Assemblies that are not its own, and parts that remedies put in. */
function replaced({ slots, parts }: KeptAndReplaced, item: Item): Fact {
  const named = (holds: 'another' | 'nothing'): string[] => slots.filter((slot) => slot.holds === holds).map(({ name }) => name);
  const moves = item.history.flatMap((entry) => (entry.kind === 'slot' ? [entry.eventId] : []));
  const said = sentence(
    [...named('another').map((name) => `${name} (of another one)`), ...new Set(parts.map(({ name }) => name))],
    'Replaced: ',
    [...moves, ...parts.map(({ eventId }) => eventId)],
  );
  const lacks = sentence(named('nothing'), 'Without: ', moves);
  return { text: [said.text, lacks.text].filter((text) => text !== '').join(' '), events: [...new Set([...said.events, ...lacks.events])] };
}
