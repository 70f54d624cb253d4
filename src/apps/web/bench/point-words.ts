import type { MeterMode } from '../../../bench/events/index.ts';
import { MODE_WORDS } from '../format/words.ts';

/** "V33 to ground, diode"; a name that tells the mode tells it once. */
export function pointTitle({ name, mode }: { readonly name: string; readonly mode: MeterMode }): string {
  const mine = MODE_WORDS[mode].toLowerCase();
  return name.toLowerCase().endsWith(mine) ? name : `${name}, ${mine}`;
}

/** "V33 to ground, diode, all out, switched off". */
export function pointWords(point: { readonly name: string; readonly mode: MeterMode; readonly power: { readonly name: string } }): string {
  const fed = point.power.name;
  return `${pointTitle(point)}, ${fed.charAt(0).toLowerCase()}${fed.slice(1)}`;
}
