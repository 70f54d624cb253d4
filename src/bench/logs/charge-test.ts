import type { ChargeJudged, Verdicts } from '../../core/rework/index.ts';
import type { TestValue, TestVerdict } from '../events/index.ts';
import { PRINTED_CAPACITY } from '../report/test-names.ts';
import { alarmWords, verdictWords } from './charge-words.ts';

/** What a test says, as it goes into the log of the bench. */
export interface TestSaid {
  readonly verdict: TestVerdict;
  readonly text: string;
  readonly values: readonly TestValue[];
}

/** Port, charger and cell in sentences. */
export const verdictLines = ({ port, charger, cell }: Verdicts): string[] => [
  verdictWords('Port', port),
  verdictWords('Charger', charger),
  verdictWords('Cell', cell),
];

/** A judged log of charging as a test of the unit. */
export function chargeTest(judged: ChargeJudged, ratedAh: number | undefined): TestSaid {
  return {
    verdict: worstOf(judged),
    text: [...verdictLines(judged.verdicts), ...judged.alarms.map(alarmWords)].join(' '),
    values: valuesOf(judged, ratedAh),
  };
}

function worstOf({ verdicts: { port, charger, cell }, alarms }: ChargeJudged): TestVerdict {
  const states = [port.state, charger.state, cell.state];
  if (states.includes('bad') || alarms.length > 0) return 'bad';
  if (states.includes('suspect')) return 'suspect';
  return states.includes('good') ? 'good' : 'not-known';
}

function valuesOf({ capacityAh, charge, whole, resistance, end }: ChargeJudged, ratedAh: number | undefined): TestValue[] {
  const round = (value: number, digits: number): number => Number(value.toFixed(digits));
  const lost = ratedAh === undefined || !whole ? null : Math.max(0, 100 * (1 - capacityAh / ratedAh));
  return [
    { name: whole ? 'Capacity' : 'Capacity, at least', value: round(capacityAh, 4), unit: 'A h' },
    { name: 'Capacity, give or take', value: round(charge.unsureAh, 4), unit: 'A h' },
    ...(ratedAh === undefined ? [] : [{ name: PRINTED_CAPACITY, value: ratedAh, unit: 'A h' }]),
    ...(lost === null ? [] : [{ name: 'Capacity lost', value: round(lost, 1), unit: '%', criterion: 'battery' as const }]),
    ...(resistance === null ? [] : [{ name: 'Resistance by two loads', value: round(resistance.ohms, 4), unit: 'Ω' }]),
    ...(end === null
      ? []
      : [
          { name: 'Voltage held', value: round(end.heldV, 3), unit: 'V' },
          { name: 'Current at the end', value: round(end.amps, 4), unit: 'A' },
        ]),
  ];
}
