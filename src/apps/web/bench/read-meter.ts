import type { MeterMode } from '../../../bench/events/index.ts';
import { parseReading } from '../../../bench/parse-reading.ts';
import { MODE_WORDS } from '../format/words.ts';

export type MeterText =
  | { readonly ok: true; readonly value: number | null }
  | {
      readonly ok: false;
      readonly message: string;
      /** Given when it is a reading, but of this other mode: then it is to be asked which is right. */
      readonly said?: MeterMode;
      readonly value: number | null;
    };

/** The value typed for a point that is measured in `mode`; a drop typed as volts is taken for a diode point. */
export function readMeter(text: string, mode: MeterMode): MeterText {
  const parsed = parseReading(text, mode);
  if (!parsed.ok) return { ok: false, message: parsed.message, value: null };
  const said = parsed.mode === 'volts' && mode === 'diode' ? 'diode' : parsed.mode;
  if (said === undefined || said === mode) return { ok: true, value: parsed.value };
  const [is, was] = [MODE_WORDS[mode].toLowerCase(), MODE_WORDS[said].toLowerCase()];
  const message = `This point is measured in ${is} and that is a reading in ${was}. Which is it? Turn the meter to ${is} and measure again, or note it where it belongs.`;
  return { ok: false, message, said, value: parsed.value };
}
