import type { Refusal } from './bench.ts';
import type { BackupTrouble, InstrumentAnswer, PhotoRefusal } from './ports.ts';
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
  'no-device-key':
    'The bench does not know this device. On the machine of the bench open Settings, Devices, let a device join, and scan the code that it shows.',
  'role-too-small': 'The device "{where}" may not do this; it takes the role {detail}. Do it on another device, or let this one join anew.',
  'other-device': 'The event says that {detail} noted it, but it was sent by another device. Send it from there.',
  'too-many-requests': 'Too many requests came from here at once. Wait a minute, then go on.',
  'invite-unknown': 'This invitation does not hold: {detail}. Make a new one under Settings, Devices, and scan that.',
  'device-name-taken': 'There is a device called "{detail}" already. Give this one another name.',
  'no-such-device': 'No device is called "{detail}". The list of devices shows the names that there are.',
  'no-network': 'The bench answers to this machine only. Start it with --lan, then let the device join.',
  'no-such-address': 'There is nothing at {detail}. /openapi.json lists every address.',
  'no-such-item': 'No item is called "{detail}". Give its id or its stock number, such as 7; the list of items shows both.',
  'no-such-bag': 'No bag is called "{detail}". The drawer shows every bag with its id.',
  'no-circuit': '"{detail}" has no netlist that can be used. Draw or import one first; the power tree alone will do.',
  'not-growing': '"{detail}" is a model of the folder, which does not grow here. Begin a copy of it, and take this over there.',
  'no-such-model': 'No model is called "{detail}". The list of models shows the names that there are.',
  'no-plans': 'This bench makes no plans of the pile. Go by the outlook of the listing alone.',
  'photo-too-coarse':
    'The photo has {where} pixels to a millimetre, and small parts need {detail}. Check the scale, take the photo from nearer, or scan the board at 600 dpi.',
  'board-too-large':
    'By its scale the photo shows {where} mm, and up to {detail} mm are looked at. Check the scale, or take a photo of one part of the board.',
  'no-outlines': 'The photo was not looked at for parts. Mark them by hand, or try again.',
  'no-such-choice':
    'The plan knows no such choice for "{detail}". Ask /api/plan what could be decided for each item; while no plan stands there is nothing to compare with.',
  'no-such-comparison': 'No comparison {detail} was begun since the bench was started. Ask for it anew by its photo.',
  'no-reference':
    'There is no other photo of a good board of {detail} on that side to compare with. Photograph a board that is known to work, and choose that photo as a reference.',
  'no-eyes': 'This bench compares no photos. Look at both side by side.',
  'no-such-photo': 'There is no photo "{detail}" on this bench. Load the page again, or add the photo once more.',
  'panel-too-large':
    'The panel "{detail}" is larger than a page of {where}. Print it on the other paper, or lay the fasteners on the screen’s mat.',
  'no-photos': 'No picture came with the request. Send one or more files in a form field named photos.',
  'not-empty':
    'This bench already holds {detail} events, and a bundle goes only into an empty one. Start Salvor with a new --home and import it there.',
  'bad-bundle': 'The bundle cannot be read: {detail}. Export it again and import the new file.',
  'web-not-built': 'The web app is not built yet. Run npm run build in the checkout, then load the page again.',
  'no-such-file': 'The file {detail} cannot be read. Check its path.',
  'file-too-large': 'The file {where} has more than {detail} MiB, which is more than is taken there. Check that it is the right one.',
  'bad-pattern': 'The pads in {where} cannot be read: {detail}. Mend the file, or export it again as .kicad_mod or as CSV.',
  'bad-table': 'The table {where} cannot be read: {detail}',
  'bad-log': 'The log in {where} cannot be judged: {detail}',
  'no-reading': 'The instrument at {where} gave no reading: {detail}',
  'nothing-to-teach':
    '{detail} has no readings since its last work that a model which grows here could learn and does not have. Measure it at points of its model first.',
  'nothing-to-undo': 'Nothing is left to undo here. salvor show ITEM lists what happened, with what was taken back already.',
  'bad-amount': '"{detail}" is not an amount of money in {where}. Write it as 12 or 12.50.',
  'bad-claim': '"{detail}" is not a claim. Write sound=fails for a function, shell:cracked for a place, or untested.',
  'bad-usage': '{detail}. Add --help to see how it is written, with examples.',
  'cannot-write': 'The file {detail} cannot be written. Check that its folder is there and may be written to.',
  'move-differs':
    'What arrived has the hash {detail}, what was sent {where}. Do not use the copy: make a backup of the bench, and move it again into an empty one.',
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
  'order-cancelled': 'If it came after all, undo that first.',
  'more-than-ordered': 'Count again; what came beyond the order goes in as a bag that was bought.',
  'refund-too-large': 'Note only what was paid back for what did not come.',
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
  'model-not-grown': 'Begin a new model, as a copy of it if it is one of the folder.',
  'fact-does-not-fit': 'Change what else speaks of it first, or write it otherwise.',
  'unknown-part': 'Mark the part on the picture first.',
  'unknown-photo': 'Add the photo first, or name one of these.',
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

const BACKUP_SENTENCES: Readonly<Record<BackupTrouble['code'] | 'backup-differs', string>> = {
  'backup-folder-unfit':
    'Backups cannot go into {where}: {detail}. Choose a folder that is there, may be written to, and lies outside the bench.',
  'backup-folder-gone':
    'The folder of the backups, {where}, is not there: {detail}. Plug in its disk, or choose another folder in Settings or with salvor backup --folder.',
  'backup-not-written':
    'The backup in {where} could not be written: {detail}. Make room there or choose another folder, then make it again.',
  'backup-unreadable': 'The backup {where} cannot be used: {detail}. Use an older one, and make a new one soon.',
  'backup-newer': 'The backup {where} cannot be brought back here: {detail}.',
  'no-such-backup': 'There is no backup {where}: {detail}. salvor backup --list and Settings show those that there are.',
  'backup-differs': 'The backup {where} opens but is not the same bench: {detail}. Keep the bench as it is, and make another backup.',
};

/** Why a backup could not be made, tried or brought back, and what to do next. */
export function problemOfBackup({
  code,
  where,
  detail,
}: Pick<BackupTrouble, 'where' | 'detail'> & { readonly code: keyof typeof BACKUP_SENTENCES }): Problem {
  return { code, message: sentence(BACKUP_SENTENCES[code], { where, detail }), where };
}

const INSTRUMENT_NEXT: Readonly<Record<Extract<InstrumentAnswer, { ok: false }>['code'], string>> = {
  'bad-address': 'Write its address as 192.0.2.7 or meter.local:5025.',
  'not-reached': 'Check that it is on, on the same network, and that its remote control (SCPI over TCP) is allowed.',
  'timed-out': 'Check that it is not busy or waiting for a trigger, and try again.',
  closed: 'Close other programs that hold it, and try again.',
  'not-an-instrument': 'Something else answers there. Check the address and the port.',
  'answer-too-long': 'Something else answers there. Check the address and the port.',
  'instrument-error': 'It may not measure that, or is set to another mode. Its own manual says which commands it takes.',
  'not-a-number': 'Check its leads and its range, and try again.',
};

/** Why an instrument at an address gave no reading, and what to do. */
export function problemOfInstrument({ code, detail }: Extract<InstrumentAnswer, { ok: false }>, address: string): Problem {
  return problemFor('no-reading', { where: address, detail: `${detail}. ${INSTRUMENT_NEXT[code]}` });
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
  'database-away': 'Start the database, or check its address and the way to it, then try again: an event sent twice is stored once.',
  'database-refused': 'Check the name of the database, the user, the password, and that the user may make tables there.',
  'photos-away': 'Check the name of the bucket, its keys, its endpoint and the way to it, then try again: a photo sent twice is kept once.',
  'store-failed': 'Check the disk, then try again.',
};

/** What the system says of a disk, by its own codes, and what to do about it. */
const DISK_SENTENCES: Readonly<Record<string, readonly [code: string, sentence: string]>> = {
  ENOSPC: ['disk-full', 'The disk of the bench is full, so nothing more can be kept. Make room on it, then try again.'],
  EDQUOT: ['disk-full', 'The space that the bench may use on its disk is used up. Make room there, then try again.'],
  EROFS: ['disk-read-only', 'The disk of the bench can only be read. Allow it to be written, then try again.'],
  EACCES: ['disk-read-only', 'The folder of the bench may not be written to. Allow that, then try again.'],
  EPERM: ['disk-read-only', 'The folder of the bench may not be written to. Allow that, then try again.'],
  EIO: ['disk-failing', 'The disk of the bench does not answer as it should. Make a backup onto another disk, and check this one.'],
};

/** The problem in an error of the store or the disk, whose code says which; null for an error of another kind. */
export function problemOfStore(error: unknown): Problem | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const disk = Object.hasOwn(DISK_SENTENCES, code) ? DISK_SENTENCES[code] : undefined;
  if (disk) return { code: disk[0], message: disk[1] };
  if (!Object.hasOwn(STORE_NEXT, code)) return null;
  return { code, message: `${capital((error as Error).message)}. ${STORE_NEXT[code]}` };
}
