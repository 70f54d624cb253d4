import type { MeterMode } from '../../../bench/events/index.ts';
import { parseReading } from '../../../bench/parse-reading.ts';
import { MODE_WORDS } from '../format/words.ts';

export type MeterText = { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly message: string };

/** The value typed for a point that is measured in `mode`; a drop typed as volts is taken for a diode point. */
export function readMeter(text: string, mode: MeterMode): MeterText {
  const parsed = parseReading(text);
  if (!parsed.ok) return { ok: false, message: parsed.message };
  const said = parsed.mode === 'volts' && mode === 'diode' ? 'diode' : parsed.mode;
  if (said === undefined || said === mode) return { ok: true, value: parsed.value };
  return {
    ok: false,
    message: `This point is measured in ${MODE_WORDS[mode].toLowerCase()} and that is a reading in ${MODE_WORDS[said].toLowerCase()}: turn the meter to ${MODE_WORDS[mode].toLowerCase()} and measure again.`,
  };
}
