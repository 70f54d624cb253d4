import { phraseOf, type Phrase } from './phrase.ts';

/** A thing that listings speak of, and what it may be called in a model: the first that the model has counts. */
export interface Topic {
  readonly id: string;
  readonly phrases: readonly Phrase[];
  readonly functions: readonly string[];
  readonly places: readonly string[];
  /** What "no …" says: that it does not work, or that it is not there. */
  readonly no: 'fails' | 'missing';
}

const topic = (id: string, words: readonly string[], functions: readonly string[], places: readonly string[], no: Topic['no']): Topic => ({
  id,
  phrases: words.flatMap((text) => [text, ...(/[a-z]$/.test(text) && !text.endsWith('s') ? [`${text}s`] : [])]).map(phraseOf),
  functions,
  places,
  no,
});

/** Common words of listings for handhelds (our own collection; no source). A model's own names are added by `topicsOf`. */
export const TOPICS: readonly Topic[] = [
  topic(
    'unit',
    ['it', 'player', 'unit', 'machine', 'device', 'this', 'them', 'rest', 'otherwise', 'else'],
    ['starts', 'turns'],
    [],
    'missing',
  ),
  topic('power', ['power', 'power lamp|light|led'], ['starts', 'turns'], ['switch'], 'fails'),
  topic('switch', ['power|on switch', 'switch'], ['starts'], ['switch'], 'missing'),
  topic('on-battery', ['on ~ battery|batteries|cells', 'battery life'], ['runs-on-battery'], ['battery', 'cells'], 'fails'),
  topic('on-charger', ['on ~ charger|mains|adapter', 'plugged in'], ['runs-on-charger', 'runs-on-inlet'], ['charger', 'supply'], 'fails'),
  topic('battery', ['battery', 'batteries', 'cells', 'cell', 'battery pack'], ['runs-on-battery'], ['battery', 'cells'], 'missing'),
  topic('door', ['battery|cell door|cover|lid|flap', 'back cover', 'door', 'tape door', 'lid'], ['closes'], ['shell'], 'missing'),
  topic(
    'contacts',
    ['battery|cell contacts|terminals|springs|spring|compartment|bay|box', 'contacts', 'terminals', 'springs'],
    [],
    ['battery-contacts', 'battery-socket'],
    'missing',
  ),
  topic('charger', ['charger', 'power supply', 'adapter', 'mains lead|supply'], [], ['charger', 'supply'], 'missing'),
  topic(
    'charge-port',
    ['charging|charge|power port|socket|inlet', 'port', 'inlet'],
    ['charges', 'runs-on-inlet'],
    ['charge-port', 'inlet'],
    'missing',
  ),
  topic('charging', ['charging'], ['charges'], ['charge-control'], 'fails'),
  topic('picture', ['screen', 'display', 'picture', 'image', 'lcd'], ['picture'], ['display'], 'fails'),
  topic('light', ['light', 'backlight', 'back light', 'lamp', 'lighting'], ['light'], ['light'], 'fails'),
  topic('sound', ['sound', 'audio', 'music'], ['sound', 'hiss', 'plays'], ['sound', 'amplifier'], 'fails'),
  topic('speaker', ['speaker', 'speakers'], ['sound'], ['speaker'], 'missing'),
  topic('volume', ['volume', 'volume wheel|control|knob'], ['sound', 'hiss'], ['volume'], 'missing'),
  topic('phones', ['headphone* socket', 'headphone*', 'earphone*'], ['phones', 'hiss'], ['phone-socket', 'phones'], 'fails'),
  topic('keys', ['key', 'keys', 'button*', 'controls', 'direction pad'], ['keys'], ['keys'], 'missing'),
  topic('slot', ['slot', 'cartridge|game slot'], ['reads-slot'], ['slot'], 'fails'),
  topic('cartridge', ['cartridge*', 'game', 'games'], ['reads-slot'], ['cartridge'], 'missing'),
  topic('link', ['link', 'link socket|port'], ['link'], ['link-socket'], 'fails'),
  topic('cable', ['link cable|lead', 'cable', 'lead'], [], ['cable'], 'missing'),
  topic('shell', ['shell', 'case', 'casing', 'housing', 'body', 'hinge', 'window', 'corner'], ['closes'], ['shell'], 'missing'),
  topic('ribbon', ['ribbon', 'flex'], ['picture'], ['ribbon'], 'missing'),
  topic('board', ['board', 'circuit board'], [], ['board'], 'missing'),
  topic('reels', ['reels', 'reel', 'motor'], ['turns'], ['motor'], 'fails'),
  topic('belt', ['belt'], ['turns'], ['belt'], 'missing'),
  topic('tape', ['tape', 'tapes', 'cassette*'], ['plays'], ['tape'], 'missing'),
  topic('speed', ['speed', 'pitch'], ['steady'], ['motor-drive'], 'fails'),
  topic('winding', ['rewind*', 'fast forward', 'winding'], ['winds'], ['mechanism'], 'fails'),
  topic('head', ['head', 'heads'], ['plays'], ['head'], 'missing'),
];
