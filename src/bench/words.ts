import type { Refusal } from './bench.ts';
import type { PhotoRefusal } from './ports.ts';
import type { RuleCode } from './rules/index.ts';
import type { Taken } from './take-bundle.ts';
import type { Problem } from './views/index.ts';

/** What an app knows of a bad outcome beside its code. */
export interface ProblemFields {
  /** The field, file or line concerned. */
  readonly where?: string;
  /** What is wrong there, or the name that was given: put into the sentence. */
  readonly detail?: string;
}

/** Sentences of the apps by code: what is wrong, and what to do next. `{where}` and `{detail}` stand for the fields. */
const SENTENCES = {
  'bad-input': 'The field {where} does not fit: {detail}. Mend it and send it again; /openapi.json describes every field.',
  'bad-json': 'The body is not JSON. Check its brackets and quotation marks, and send it again.',
  'body-too-large': 'The request is larger than this address takes. Send it in several smaller ones.',
  'unsupported-media-type': 'This address does not take that type of content. Send the content type that /openapi.json names for it.',
  'foreign-host':
    'The bench answers only to this machine, not to "{detail}". Open it as http://127.0.0.1 or http://localhost with its port.',
  'foreign-origin': 'A page of {detail} asked to change the bench, which only its own pages may. Open the bench itself and do it there.',
  'no-such-address': 'There is nothing at {detail}. /openapi.json lists every address.',
  'no-such-item': 'No item is called "{detail}". Give its id or its stock number, such as 7; the list of items shows both.',
  'no-such-model': 'No model is called "{detail}". The list of models shows the names that there are.',
  'no-plans': 'This bench makes no plans of the pile. Go by the outlook of the listing alone.',
  'no-such-choice':
    'The plan knows no such choice for "{detail}". Ask /api/plan what could be decided for each item; while no plan stands there is nothing to compare with.',
  'no-such-photo': 'There is no photo "{detail}" on this bench. Load the page again, or add the photo once more.',
  'no-photos': 'No picture came with the request. Send one or more files in a form field named photos.',
  'not-empty':
    'This bench already holds {detail} events, and a bundle goes only into an empty one. Start Salvor with a new --home and import it there.',
  'bad-bundle': 'The bundle cannot be read: {detail}. Export it again and import the new file.',
  'web-not-built': 'The web app is not built yet. Run npm run build in the checkout, then load the page again.',
  'no-such-file': 'The file {detail} cannot be read. Check its path.',
  'bad-pattern': 'The pads in {where} cannot be read: {detail}. Mend the file, or export it again as .kicad_mod or as CSV.',
  'bad-table': 'The table {where} cannot be read: {detail}',
  'nothing-to-undo': 'Nothing is left to undo here. salvor show ITEM lists what happened, with what was taken back already.',
  'bad-amount': '"{detail}" is not an amount of money in {where}. Write it as 12 or 12.50.',
  'bad-claim': '"{detail}" is not a claim. Write sound=fails for a function, shell:cracked for a place, or untested.',
  'bad-usage': '{detail}. Add --help to see how it is written, with examples.',
  'cannot-write': 'The file {detail} cannot be written. Check that its folder is there and may be written to.',
  'server-ended': 'The server ended with code {detail}. Its own words above say why.',
  'store-trouble':
    'The bench in {where} cannot be opened or written: {detail}. Check that the folder may be written and the disk has room.',
  unexpected: 'Something went wrong inside Salvor. Look whether it was done, then try again: an event sent twice is stored once.',
} as const;

export type ProblemCode = keyof typeof SENTENCES;

/** The problem of a code, as a sentence that says what is wrong, where, and what to do next. */
export function problemFor(code: ProblemCode, fields: ProblemFields = {}): Problem {
  const message = sentence(SENTENCES[code], { where: fields.where ?? '', detail: fields.detail ?? '' });
  return { code, message, ...(fields.where ? { where: fields.where } : {}) };
}

/** A template with its placeholders filled. */
const sentence = (template: string, fields: Readonly<Record<string, string>>): string =>
  template.replace(/\{(\w+)\}/g, (_all, name: string) => fields[name] ?? '');

/** What to do next about a refusal of the rules; empty where the clause itself ends with the way out. */
const NEXT: Readonly<Record<RuleCode, string>> = {
  'unknown-item': 'Use one of these, or note the lot that it came in first.',
  'unknown-bag': 'Use one of these, or note the bag first.',
  'unknown-order': 'Use one of these, or note the order first.',
  'unknown-listing': 'Use one of these, or weigh the listing first.',
  'unknown-model': 'Use one of these, or add a model file and start again.',
  'unknown-function': 'Use one of these.',
  'unknown-accessory': 'Use one of these.',
  'unknown-point': 'Use one of these.',
  'off-the-board': 'Draw it on the picture of the board, or leave the region out.',
  'unknown-remedy': 'Use one of these.',
  'unknown-slot': 'Use one of these.',
  'unknown-step': 'Use one of these.',
  'unknown-fasteners': 'Use one of these.',
  'unknown-event': 'Take its id from the log of the item.',
  'id-taken': '',
  'wrong-mode': 'Measure it again that way, or use another point.',
  'item-gone': '',
  'not-sold': 'Look at its log: only what was sold can come back.',
  'still-inside': '',
  'proof-incomplete': '',
  'reason-missing': 'Write one, or do the step.',
  'not-enough-parts': 'Count the bag again, or note the parts that were bought.',
  'already-arrived': 'Nothing more is needed.',
  'already-corrected': 'To bring it back, undo that correction.',
  'listing-closed': 'Weigh the new offer as a listing of its own.',
  'currency-fixed': 'Give other currencies with their rate, or start another bench.',
  'rate-not-one': 'Leave the rate out.',
  'rate-missing': 'Use the rate of the day of the payment.',
  'amount-too-large': 'Check the number of digits.',
  'not-a-unit': 'Name the unit that it sits in.',
  'not-an-assembly': 'Name an assembly, or take one out of the unit.',
  'slot-missing': '',
  'slot-occupied': '',
  'slot-empty': 'Name the assembly itself if it lies in the drawer.',
  'does-not-fit': 'Look for another one in the drawer.',
  'not-there': 'Note where it is moved from.',
  'bands-out-of-order': 'Put the bands in order of price.',
  'figure-missing': 'Ask your tax office or accountant for the figure that holds for you.',
  'unknown-fact': 'Use one of these, or leave it out.',
  'not-open': 'Tick what was really done.',
  'too-many-foreign': 'Count them again.',
  'nothing-moves': 'Leave one of the two out for the drawer.',
};

const PHOTO_SENTENCES: Readonly<Record<PhotoRefusal['code'], string>> = {
  'photo-empty': '{name} is empty. Take or copy the picture again.',
  'photo-too-large': '{name} is too large a file ({detail}). Save it smaller, or with stronger compression, and add it again.',
  'photo-too-many-pixels': '{name} has more pixels than a photo of a board needs ({detail}). Scale it down and add it again.',
  'photo-not-a-picture': '{name} is not a picture ({detail}). Add a JPEG, PNG or WebP.',
  'photo-mislabelled': '{name} is not what its name says ({detail}). Give it its true ending and add it again.',
  'photo-corrupt': '{name} is damaged and cannot be shown whole ({detail}). Copy it from the camera again.',
  'photo-unsupported':
    '{name} is of a kind that cannot be read here ({detail}). Set the camera to JPEG, or save a copy as JPEG, and add that.',
};

/** Why a picture was not taken, and what to do instead. */
export function problemOfPhoto(refusal: PhotoRefusal): Problem {
  const message = sentence(PHOTO_SENTENCES[refusal.code], { name: refusal.name, detail: refusal.detail });
  return { code: refusal.code, message, where: refusal.name };
}

/** Why the bench did not take a batch of `of` events, and what to do next. */
export function problemOfRefusal(refusal: Refusal, of = 1): Problem {
  const { code, field, message, index } = refusal;
  const batch = of > 1 ? ` This is event ${index + 1} of ${of}; none of them was stored.` : '';
  const said = isRuleCode(code)
    ? `${capital(message)}. ${NEXT[code]}`
    : `The field ${field} does not fit: ${message}. Mend it and send it again.`;
  return { code, message: said.trimEnd() + batch, where: of > 1 ? `events.${index}.${field}` : field };
}

const isRuleCode = (code: string): code is RuleCode => Object.hasOwn(NEXT, code);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Why a bundle of so many events was not taken into the bench. */
export function problemOfTaking(outcome: Exclude<Taken, { ok: true }>, of: number): Problem {
  if (outcome.code === 'bench-not-empty') return problemFor('not-empty', { detail: 'other' });
  if ('index' in outcome) return problemOfRefusal(outcome, of);
  if ('name' in outcome) return problemOfPhoto(outcome);
  return problemFor('not-empty', { detail: String(outcome.events) });
}

/** What to do about each trouble of the store; its clause, which names the file, comes before. */
const STORE_NEXT: Readonly<Record<string, string>> = {
  'store-too-new': 'It was written by a newer Salvor: use that one.',
  'store-not-a-database': 'Move the file away, or start with another folder.',
  'store-of-another-program': 'Start with another folder: this one belongs to something else.',
  'store-corrupt': 'Copy the whole folder to a safe place first, then bring back a bundle that was exported earlier.',
  'store-read-only': 'Allow the folder and the file to be written.',
  'store-cannot-open': 'Check that the folder is there and may be written.',
  'store-busy': 'Close the other program, then try again.',
  'store-full': 'Make room on the disk, then try again.',
  'store-failed': 'Check the disk, then try again.',
};

/** The problem in an error of the store, whose code says which; null for an error of another kind. */
export function problemOfStore(error: unknown): Problem | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (!Object.hasOwn(STORE_NEXT, code)) return null;
  return { code, message: `${capital((error as Error).message)}. ${STORE_NEXT[code]}` };
}
