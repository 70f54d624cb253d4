import { CELL_LIMITS, cellShipping } from '../../core/rework/index.ts';
import { CAUTION_WORDS } from '../caution-words.ts';
import type { Model } from '../models/index.ts';
import { LITHIUM_POST } from '../selling/listing-text.ts';
import type { Item } from '../state.ts';
import { PRINTED_CAPACITY } from './test-names.ts';

const UNSOUND: ReadonlySet<string> = new Set(['swollen', 'burnt', 'cracked']);

/** Cautions on the cell of a unit and on sending it; none without a lithium cell. Local rules and the carrier's come first. */
export function cellCautions({ file }: Model, item: Item): string[] {
  const { cell } = file;
  if (cell?.chemistry !== 'li-ion') return [];
  const printed = item.tests.findLast(({ test }) => test === 'charge-log')?.values.find(({ name }) => name === PRINTED_CAPACITY);
  const sound = !isUnsound(file, item);
  const said = printed ? [sizeWords(cell.volts, printed.value, sound)] : [];
  return [CAUTION_WORDS['lithium-cell'], ...(sound ? [] : [NOT_SENT]), LITHIUM_POST, ...said];
}

const NOT_SENT =
  'A cell of this unit was found swollen or damaged: it is neither charged nor sent. Keep it on stone or metal outdoors, and take it to a collection point as local rules ask.';

function sizeWords(volts: number, capacityAh: number, sound: boolean): string {
  const { wattHours, small, un } = cellShipping(volts, capacityAh, 1, 'in-device', sound);
  const size = `Its cell holds ${wattHours.toFixed(1)} Wh (${volts} V × ${capacityAh} A h), UN ${un}`;
  return small
    ? `${size}: within the ${CELL_LIMITS.cellWh} Wh of a small cell (ADR special provision 188).`
    : `${size}: above the ${CELL_LIMITS.cellWh} Wh of a small cell, so that it goes as dangerous goods of class 9.`;
}

/** Damage seen on the cell since it was last put in. */
function isUnsound(file: Model['file'], { history }: Item): boolean {
  const slots = new Set(file.slots.filter(({ id, name }) => /batter|cell/i.test(`${id} ${name}`)).map(({ id }) => id));
  const places = new Set([...slots, ...file.blocks.filter(({ assembly }) => assembly && slots.has(assembly)).map(({ id }) => id)]);
  const since = history.findLastIndex((entry) => entry.kind === 'slot' && slots.has(entry.slot) && entry.came !== null);
  return history.slice(since + 1).some((entry) => entry.kind === 'finding' && places.has(entry.place) && UNSOUND.has(entry.sees));
}
