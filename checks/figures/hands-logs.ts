import { oddLogs } from '../rework/odd-logs.ts';
import { round, type Figure, type Progress } from './figure.ts';

const CELLS = 20;

/** Odd logs of cells and chargers that no test uses. */
export function logFigures(progress: Progress): Figure[] {
  progress('Reading odd logs …');
  const logs = Array.from({ length: CELLS }, (_, i) => oddLogs(`measured ${i}`)).flat();
  const wrong = logs.flatMap(({ name, wrong: of }) => (of().length > 0 ? [name] : []));
  const reference =
    `${logs.length / CELLS} kinds of odd logs (gaps, decimal commas, clocks begun anew and set, columns in another order, misnamed, without names …) ` +
    `of ${CELLS} simulated cells each: the right answer or a clear refusal${wrong.length > 0 ? `; wrong: ${[...new Set(wrong)].join(', ')}` : ''}`;
  return [{ figure: 'hands.odd_logs_right', value: round(1 - wrong.length / logs.length), unit: '', target: '= 1', reference }];
}
