import { parseReading } from '../../../bench/parse-reading.ts';
import { claimIn } from '../claims.ts';
import type { Session } from '../session.ts';
import { EXIT, misuse, Stop } from '../stop.ts';
import { given, minutesOf, MINUTES, TEXT, type AddSpec, type Made, type Options } from './add-command.ts';

/** What is said, tried, seen and measured. */
export const EVIDENCE: readonly AddSpec[] = [
  {
    usage: 'claim <item> <claims...>',
    description: 'what the seller says: sound=fails of a function, shell:cracked of a place, untested',
    options: [TEXT],
    example: 'salvor add claim 1 starts=fails shell:cracked',
    make: (session, [name = '', ...claims], options) => {
      const { id } = session.item(name);
      const drafts = claims.map(
        (text) => ({ kind: 'claim-made', body: { item_id: id, claim: claimIn(text), ...given(options, 'text') } }) as const,
      );
      return { drafts, itemId: id };
    },
  },
  {
    usage: 'trial <item> <function> <outcome>',
    description: 'how it behaves when tried: works, fails or comes-and-goes',
    options: [['--with <accessories>', 'known-good accessories used, with commas between'], MINUTES],
    example: 'salvor add trial 1 sound fails --with good-cells --minutes 2',
    make: (session, [name = '', what = '', outcome = ''], options) => {
      const { id } = session.item(name);
      const accessories = options.with === undefined ? {} : { with: options.with.split(',') };
      return {
        drafts: [{ kind: 'trial-done', body: { item_id: id, function: what, outcome, ...accessories, ...minutesOf(options) } }],
        itemId: id,
      };
    },
  },
  {
    usage: 'finding <item> <place> <sees>',
    description: 'what is seen at a place, such as corrosion, missing, or nothing-wrong',
    options: [TEXT, MINUTES],
    example: 'salvor add finding 1 slot dirty',
    make: (session, [name = '', place = '', sees = ''], options) => {
      const { id } = session.item(name);
      return {
        drafts: [{ kind: 'finding-noted', body: { item_id: id, place, sees, ...given(options, 'text'), ...minutesOf(options) } }],
        itemId: id,
      };
    },
  },
  {
    usage: 'reading <item> <point> <value...>',
    description: 'what the meter shows: 3.28, 0.512 diode, 4k7, 140 mA, OL',
    options: [['--mode <mode>', 'volts, ohms, diode or amps, where neither the value nor the model tells'], MINUTES],
    example: 'salvor add reading 1 VBAT 2.98',
    make: reading,
  },
];

function reading(session: Session, [name = '', point = '', ...typed]: readonly string[], options: Options): Made {
  const item = session.item(name);
  const { mode, value } = readingIn(session, item.modelId, point, typed.join(' '), options.mode);
  return {
    drafts: [{ kind: 'reading-taken', body: { item_id: item.id, point, mode, value, ...minutesOf(options) } }],
    itemId: item.id,
  };
}

/** What a meter shows at a point of a model, in V, Ω or A; the mode that was named, else that of the text, else that of the point. */
export function readingIn(
  { bench }: Session,
  modelId: string,
  point: string,
  text: string,
  named?: string,
): { readonly mode: string; readonly value: number | null } {
  const parsed = parseReading(text);
  if (!parsed.ok) throw new Stop(EXIT.usage, { code: parsed.code, message: parsed.message, where: 'VALUE' });
  const own = bench.model(modelId)?.file.points.find(({ id }) => id === point)?.mode;
  const isDrop = own === 'diode' && parsed.mode === 'volts';
  const mode = named ?? (isDrop ? own : (parsed.mode ?? own));
  if (mode === undefined)
    throw misuse('bad-usage', {
      where: '--mode',
      detail: `The model does not say how "${point}" is measured: add --mode volts, ohms, diode or amps`,
    });
  return { mode, value: parsed.value };
}
