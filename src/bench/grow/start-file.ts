import type { StartAnswers } from '../events/index.ts';
import type { ModelFile } from '../models/index.ts';
import { withoutBlocks } from './without-blocks.ts';

/** What a model inherits that was begun by answering questions. */
export const ANY_PLAYER = 'any-pocket-player';

/** Blocks and functions of any pocket player that a device with such answers does not have. */
export function missingParts(answers: StartAnswers): { readonly blocks: readonly string[]; readonly functions: readonly string[] } {
  const { power, display, slot, sound, charging } = answers;
  const plugged = charging || power !== 'battery';
  const gone = [
    power === 'mains-supply' && [['battery', 'battery-contacts'], ['runs-on-battery']],
    !charging && [power === 'battery-and-charger' ? [] : ['charge-control'], ['charges']],
    !plugged && [['charge-port', 'charger'], ['runs-on-charger']],
    display === 'none' && [['display', 'ribbon'], ['picture']],
    display !== 'lit' && [['light'], ['light']],
    !slot && [['slot', 'slot-joints', 'cartridge'], ['reads-slot']],
    sound === 'none' && [['sound', 'volume'], ['sound']],
    sound !== 'speaker' && [['speaker'], []],
  ].filter((each) => each !== false);
  return { blocks: gone.flatMap(([blocks]) => blocks!), functions: gone.flatMap(([, functions]) => functions!) };
}

/** The file of a new model that inherits any pocket player as the answers leave it. */
export function startFile(anyPlayer: ModelFile, answers: StartAnswers): ModelFile {
  const { blocks, functions } = missingParts(answers);
  const file = withoutBlocks(anyPlayer, new Set(blocks), new Set(functions));
  const cell = answers.power === 'mains-supply' ? undefined : cellOf(answers);
  return cell ? { ...file, cell } : file;
}

/**
 * The cell behind a voltage: multiples of 3.6 to 4.2 V that are charged inside count as lithium, for that is the one with which a wrong guess hurts;
 * of 1.2 V as nickel; of 1.5 V, not charged, as alkaline. Common practice, no source. None where the voltage is not known.
 */
function cellOf({ cell_volts: volts, charging }: StartAnswers): ModelFile['cell'] {
  if (volts === null) return undefined;
  const inSeries = (low: number, high: number): boolean => Math.ceil(volts / high - 1e-9) <= Math.floor(volts / low + 1e-9);
  const isLithium = inSeries(3.6, 4.2);
  if (charging) return { volts, chemistry: isLithium ? 'li-ion' : inSeries(1.2, 1.3) ? 'nimh' : 'other' };
  if (inSeries(1.5, 1.6)) return { volts, chemistry: 'alkaline' };
  return { volts, chemistry: isLithium ? 'li-ion' : 'other' };
}
