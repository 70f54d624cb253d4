import type { Body, Kind } from '../events/index.ts';
import type { LogWords } from '../log-words.ts';

type GrowKind = Extract<Kind, `model-${string}`>;
type Sentences = { readonly [K in GrowKind]: (words: LogWords, body: Body<K>) => string };

const UNITS = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' };
const FITS = { fits: 'fits', bent: 'fits after bending', 'does-not-fit': 'does not fit' };
const MOST_NAMED = 6;

/** One plain sentence for every kind of event from which models grow. */
export const GROW_SENTENCES: Sentences = {
  'model-begun': (words, { model_id: id, name, from }) => {
    const start =
      'copy_of' in from ? `as a copy of ${words.model(from.copy_of)}` : 'file' in from ? 'from a bundle' : 'from any pocket player';
    return `Began the model ${name} (${id}) ${start}.`;
  },
  'model-fact-set': (words, { model_id, section, id, field, value, source }) => {
    const place = section === 'head' ? [id, field] : [section, id, field];
    const said = value === null ? 'taken away' : typeof value === 'object' ? 'set' : String(value);
    return `${words.model(model_id)}, ${place.filter((part) => part !== undefined).join(' ')}: ${said} (${source}).`;
  },
  'model-photo-set': (words, { model_id, side, scale }) =>
    `Photo of the ${side} of the board of ${words.model(model_id)}${scale ? `, with a scale of ${scale.mm} mm` : ''}.`,
  'model-parts-placed': (words, { model_id, parts }) =>
    `Marked on the board of ${words.model(model_id)}: ${someOf(parts.map(({ ref }) => ref))}.`,
  'model-parts-removed': (words, { model_id, refs }) => `Took marks off the board of ${words.model(model_id)}: ${someOf(refs)}.`,
  'model-pins-joined': (words, { model_id, pins, joined }) =>
    `${words.model(model_id)}: ${someOf(pins)} are ${joined ? 'joined' : 'not joined'}.`,
  'model-net-named': (words, { model_id, pin, name }) => `${words.model(model_id)}: the net at ${pin} is called ${name}.`,
  'model-netlist-set': (words, { model_id, from }) =>
    `${from === 'imported' ? 'Took in' : 'Wrote'} the netlist of ${words.model(model_id)}.`,
  'model-reading-taught': (words, { model_id, board, point, mode, value }) => {
    const shown = value === null ? 'OL' : `${value} ${UNITS[mode]}`;
    return `Known-good board "${board}" of ${words.model(model_id)}, ${point} in ${mode}: ${shown}.`;
  },
  'model-step-recorded': (words, { model_id, step, fasteners }) => {
    const screws = fasteners ? `, ${fasteners.count} × ${fasteners.name}` : '';
    return `Step of opening ${words.model(model_id)} recorded: ${step.name}${screws}.`;
  },
  'model-fit-seen': (words, { model_id, slot, other_model_id, part, outcome }) => {
    const tried = part ?? `the ${slot} of ${words.model(other_model_id ?? '')}`;
    return `Tried ${tried} in the ${slot} of ${words.model(model_id)}: ${FITS[outcome]}.`;
  },
  'model-taken-in': (words, { model_id, from_author, facts }) =>
    `Took ${facts.length} facts of "${from_author}" into the model ${words.model(model_id)}.`,
  'model-judged-again': (words, { item_id, model_id }) =>
    `${words.item(item_id)} is judged by the newest version of ${words.model(model_id)}.`,
};

const someOf = (names: readonly string[]): string =>
  names.length > MOST_NAMED ? `${names.slice(0, MOST_NAMED).join(', ')} and ${names.length - MOST_NAMED} more` : names.join(', ');
