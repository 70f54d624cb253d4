import type { FindingKind, Outcome } from '../events/index.ts';
import { phraseOf, type Phrase } from './phrase.ts';

/** What words do in a clause. */
export type Rule =
  | {
      readonly does: 'behaves';
      readonly name: string;
      readonly says: Outcome;
      /** What it is said of, whatever else is named. */
      readonly topic: string | null;
      /** What it is said of when nothing is named. */
      readonly otherwise: string;
    }
  | { readonly does: 'finds'; readonly name: string; readonly sees: FindingKind; readonly topic: string | null }
  | {
      readonly does: 'lacks' | 'has' | 'not' | 'hedge' | 'past' | 'untested' | 'as-is' | 'whole' | 'except' | 'condition' | 'nothing';
      readonly name: string;
    };

export interface WordRule {
  readonly phrase: Phrase;
  readonly rule: Rule;
}

const rules = (rule: Rule, ...phrases: readonly string[]): WordRule[] => phrases.map((text) => ({ phrase: phraseOf(text), rule }));
const behaves = (name: string, says: Outcome, topic: string | null, ...phrases: readonly string[]): WordRule[] =>
  rules({ does: 'behaves', name, says, topic, otherwise: 'unit' }, ...phrases);
const finds = (name: string, sees: FindingKind, topic: string | null, ...phrases: readonly string[]): WordRule[] =>
  rules({ does: 'finds', name, sees, topic }, ...phrases);

/**
 * The rules by which listings are read: words, and what they do in a clause. Of rules that match at one place the longest counts. Where a rule names a topic it needs no
 * other. Our own collection, no source.
 */
export const WORD_RULES: readonly WordRule[] = [
  ...behaves(
    'turns on',
    'works',
    'unit',
    'turn*|switch*|power*|fire* ~ on',
    'power*|fire*|start* up',
    'start',
    'starts',
    'boot*',
    'get ~ going',
  ),
  ...behaves('charges', 'works', 'charging', 'charge', 'charges', 'charging fine|ok|well', 'take* ~ charge'),
  ...behaves('holds a charge', 'works', 'on-battery', 'hold*|keep* ~ charge', 'last*|run* ~ hours'),
  ...behaves('silent', 'fails', 'sound', 'silent', 'mute'),
  ...behaves('stays blank', 'fails', 'picture', 'stay*|remain* blank|black|dark|white', 'blank|black|white screen|display'),
  ...behaves('lights up', 'works', 'light', 'light* up', 'lit up'),
  ...behaves('lines', 'fails', 'picture', 'lines', 'missing lines', 'dead pixel*'),
  ...behaves('reads', 'works', 'slot', 'read*', 'load*', 'recognise*', 'accept* cartridge*|game*'),
  ...behaves('closes', 'works', 'shell', 'close', 'closes', 'shut*'),
  ...rules({ does: 'behaves', name: 'plays', says: 'works', topic: null, otherwise: 'tape' }, 'play', 'plays', 'playing'),
  ...behaves(
    'works',
    'works',
    null,
    'work',
    'works',
    'working',
    'in ~ working order|condition',
    'fine',
    'good',
    'ok',
    'okay',
    'perfect',
    'perfectly',
    'well',
  ),
  ...behaves(
    'works',
    'works',
    null,
    'clear',
    'sharp',
    'bright',
    'loud',
    'crisp',
    'great',
    'flawless*',
    'respond*',
    'responsive',
    'function*',
    'alive',
  ),
  ...behaves('comes on', 'works', null, 'come*|came on', 'there is|are'),
  ...behaves(
    'nothing wrong',
    'works',
    null,
    'nothing wrong',
    'no problem*|issue*|trouble|fault*|complaint*',
    'not ~ problem|issue',
    'without problem*|issue*|fault*',
  ),
  ...behaves(
    'dead',
    'fails',
    null,
    'dead',
    'broken',
    'broke',
    'faulty',
    'defective',
    'kaput',
    'bust',
    'busted',
    'gone',
    'blown',
    'failed',
    'failing',
  ),
  ...behaves(
    'dead',
    'fails',
    null,
    'blank',
    'dark',
    'black',
    'dim',
    'out',
    'stopped working',
    'stop* work*',
    'stopped',
    'gone dark|blank|dead|black',
    'nothing',
  ),
  ...behaves('no life', 'fails', 'unit', 'no sign* of life', 'no life', 'not ~ sign* of life'),
  ...behaves(
    'comes and goes',
    'comes-and-goes',
    null,
    'intermittent*',
    'come* and go*',
    'cut* out',
    'cut* in and out',
    'flicker*',
    'on and off',
  ),
  ...behaves(
    'comes and goes',
    'comes-and-goes',
    null,
    'temperamental',
    'patchy',
    'hit and miss',
    'stick',
    'sticks',
    'sticking',
    'drop* out',
    'go*|went blank|off|dead|silent|quiet|dark after',
  ),
  ...behaves('crackles', 'comes-and-goes', 'sound', 'crackl*', 'scratchy'),
  ...finds('cracked', 'cracked', null, 'crack*', 'split', 'smashed', 'shattered', 'snapped'),
  ...finds('corroded', 'corrosion', null, 'corro*', 'rust*', 'leak*', 'acid', 'verdigris', 'green stuff'),
  ...finds('dirty', 'dirty', null, 'dirt*', 'dust*', 'grubby', 'filthy', 'grime'),
  ...finds('worn', 'worn', null, 'worn', 'wear', 'scratch', 'scratched', 'scratches', 'scuff*', 'faded', 'yellowed', 'dent*'),
  ...finds('loose', 'loose', null, 'loose', 'wobbl*', 'rattl*'),
  ...finds('burnt', 'burnt', null, 'burn*', 'scorch*'),
  ...finds('swollen', 'swollen', 'battery', 'swollen', 'bulg*', 'puffed'),
  ...finds('spilled', 'residue', null, 'residue', 'spill*', 'spilt', 'water|liquid damage*', 'sticky', 'gunk'),
  ...finds(
    'opened before',
    'opened-before',
    'shell',
    'open* ~ before',
    'been opened',
    'been inside',
    'repaired before',
    'screws ~ missing',
  ),
  ...rules({ does: 'lacks', name: 'lacks' }, 'lack*', 'missing', 'lost', 'absent', 'misses'),
  ...rules({ does: 'has', name: 'comes with' }, 'includ*', 'come* with', 'supplied with|without', 'with'),
  ...rules(
    { does: 'not', name: 'not' },
    'not',
    'no',
    'no longer',
    'never',
    'neither',
    'nor',
    'none',
    'without',
    'fail* to',
    'unable to',
    'refuse* to',
    'lack* any',
  ),
  ...rules(
    { does: 'hedge', name: 'in doubt' },
    'think',
    'believe',
    'suspect',
    'guess',
    'seem*',
    'appear*',
    'probabl*',
    'possibl*',
    'maybe',
    'perhaps',
    'might',
    'may',
  ),
  ...rules(
    { does: 'hedge', name: 'in doubt' },
    'should',
    'apparently',
    'presumably',
    'supposedly',
    'reportedly',
    'likely',
    'far as i know',
    'to my knowledge',
    'was told',
    'hopefully',
  ),
  ...rules(
    { does: 'past', name: 'in the past' },
    'used to',
    'worked',
    'was working|fine|ok',
    'were working|fine',
    'last used|tried|played',
    'year*|months ago',
  ),
  ...rules(
    { does: 'untested', name: 'untested' },
    'untested',
    'unchecked',
    'untried',
    'not|never ~ test|tested|tried|checked|testing',
    'unable to test|check|try',
    'no ~ to test|check|try',
  ),
  ...rules({ does: 'untested', name: 'untested' }, 'never turned|switched ~ on', 'no idea if|whether', 'not know|say if|whether'),
  ...rules({ does: 'as-is', name: 'as is' }, 'as is', 'as seen', 'as it is', 'as they are'),
  ...rules(
    { does: 'whole', name: 'everything' },
    'everything ~ should',
    'everything',
    'all works|work|working|functions',
    'fully',
    'tested and working',
    'tested working',
    '100%',
    'full working order',
  ),
  ...rules({ does: 'except', name: 'except' }, 'except', 'apart from', 'other than', 'aside from', 'but for', 'bar'),
  ...rules(
    { does: 'condition', name: 'condition' },
    'if',
    'whether',
    'in case',
    'not sure',
    'unsure',
    'return*',
    'refund*',
    'need',
    'needs',
    'need*',
    'look at',
    'see',
  ),
];
