import type { SharedFact } from '../events/index.ts';

const UNITS = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' };
const FITS = { fits: 'fits', bent: 'fits after bending', 'does-not-fit': 'does not fit' };

/** The place that a fact speaks of, in words. */
export function placeOf(fact: SharedFact): string {
  switch (fact.kind) {
    case 'model-fact-set': {
      const { section, id, field } = fact.body;
      return [...(section === 'head' ? [] : [section]), id, ...(field === undefined ? [] : [field])].join(' ');
    }
    case 'model-photo-set':
      return `photo of the ${fact.body.side}`;
    case 'model-parts-placed':
      return `part ${fact.body.parts.map(({ ref }) => ref).join(', ')}`;
    case 'model-parts-removed':
      return `part ${fact.body.refs.join(', ')}`;
    case 'model-pins-joined':
      return `pins ${fact.body.pins.join(', ')}`;
    case 'model-net-named':
      return `net at ${fact.body.pin}`;
    case 'model-netlist-set':
      return 'netlist';
    case 'model-reading-taught':
      return `${fact.body.point} of the board "${fact.body.board}"${fact.body.revision === '' ? '' : `, revision ${fact.body.revision}`}`;
    case 'model-step-recorded':
      return `step ${fact.body.step.id}`;
    case 'model-fit-seen':
      return `${fact.body.part ?? fact.body.other_model_id} in the ${fact.body.slot}`;
  }
}

/** What a fact says of its place. */
export function saidOf(fact: SharedFact): string {
  switch (fact.kind) {
    case 'model-fact-set':
      return fact.body.value === null
        ? 'taken away'
        : typeof fact.body.value === 'string'
          ? fact.body.value
          : JSON.stringify(fact.body.value);
    case 'model-photo-set':
      return `a picture${fact.body.scale ? `, ${fact.body.scale.mm} mm between two points` : ''}`;
    case 'model-parts-placed':
      return fact.body.parts
        .map(({ kind, value, side, x_mm, y_mm }) => `${value === '' ? kind : `${kind} ${value}`}, ${side}, ${x_mm} × ${y_mm} mm`)
        .join('; ');
    case 'model-parts-removed':
      return 'taken off';
    case 'model-pins-joined':
      return fact.body.joined ? 'joined' : 'not joined';
    case 'model-net-named':
      return fact.body.name;
    case 'model-netlist-set':
      return `${fact.body.text.split('\n').length} lines`;
    case 'model-reading-taught':
      return fact.body.value === null ? 'OL' : `${fact.body.value} ${UNITS[fact.body.mode]}`;
    case 'model-step-recorded':
      return `${fact.body.step.name}${fact.body.photo === undefined ? '' : ', with a picture'}`;
    case 'model-fit-seen':
      return FITS[fact.body.outcome];
  }
}

/** A fact in words: "faults switch-dirty rate: 0.35". */
export const factText = (fact: SharedFact): string => `${placeOf(fact)}: ${saidOf(fact)}`;
