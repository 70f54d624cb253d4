import type { CheckView, ItemFile } from '../../../bench/views/index.ts';
import { openTo } from './open-to.ts';
import { note, type Workplace } from './workplace.ts';

/** Tries, looks or measures as the advice says; the hidden truth answers, and the answer is recorded. */
export function answerCheck(place: Workplace, file: ItemFile, check: CheckView): void {
  openTo(place, file, check.stage);
  const minutes = check.minutes;
  const item_id = file.row.id;
  place.clock.pass(minutes);
  if (check.kind === 'try') {
    const outcome = place.truth.tryFunction(item_id, check.target, check.with);
    note(place, 'trial-done', { item_id, function: check.target, outcome, with: check.with, minutes });
    place.say(`    It ${outcome.replaceAll('-', ' ')}.`);
  } else if (check.kind === 'look') {
    const sees = place.truth.look(item_id, check.target);
    note(place, 'finding-noted', { item_id, place: check.target, sees, minutes });
    place.say(`    Seen: ${sees.replaceAll('-', ' ')}.`);
  } else {
    const value = place.truth.measure(item_id, check.target);
    note(place, 'reading-taken', { item_id, point: check.target, mode: check.mode as 'volts', value, minutes });
    place.say(
      `    The meter shows ${value === null ? 'OL' : `${value} ${UNIT[check.mode ?? ''] ?? ''}`}${check.reference ? `; a good one shows ${check.reference}` : ''}.`,
    );
  }
}

const UNIT: Readonly<Record<string, string>> = { volts: 'V', diode: 'V', ohms: 'Ω', amps: 'A' };
