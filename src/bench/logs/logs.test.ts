import { describe, expect, it } from 'vitest';
import { judgeCharge, judgeHeat, type ChargeSample } from '../../core/rework/index.ts';
import { smallModels } from '../testing/small-model.ts';
import {
  chargeEvidence,
  chargeTest,
  clockWords,
  guessWords,
  heatTest,
  previewOf,
  readChargeLog,
  readHeatLog,
  verdictLines,
} from './index.ts';

const split = (text: string, delimiter: string) => text.split('\n').map((line) => line.split(delimiter));
const model = smallModels().get('lamp-1')!.file;
const charging = { ...model, functions: [...model.functions, { ...model.functions[0]!, id: 'charges', name: 'Charges' }] };

/** Steady, held while it falls, ended: 1 A h in about 1.2 hours, every half a minute. */
const log = (change: (row: ChargeSample) => ChargeSample = (row) => row): ChargeSample[] =>
  Array.from({ length: 170 }, (_, i) => {
    const seconds = 30 * i;
    const held = Math.max(0, seconds - 3000);
    const amps = held === 0 ? 1 : held < 1800 ? Math.exp(-held / 650) : 0;
    return { seconds, volts: held === 0 ? 3.1 + (1.1 * seconds) / 3000 : 4.2 - (amps === 0 ? 0.01 : 0), amps };
  }).map(change);
const judged = (rows: readonly ChargeSample[], ratedAh = 1) => {
  const answer = judgeCharge(rows, { chemistry: 'li-ion-4.20', ratedAh, chargerA: 1 });
  if (!answer.ok) throw new Error(answer.code);
  return answer;
};

describe('a judged log of a charge', () => {
  it('is a test with a sentence for port, charger and cell, and its numbers with what they are graded by', () => {
    const answer = judged(log());
    expect(verdictLines(answer.verdicts).map((line) => line.split(':')[0])).toEqual(['Port good', 'Charger good', 'Cell good']);
    const said = chargeTest(answer, 1);
    expect(said.verdict).toBe('good');
    expect(said.values.find(({ name }) => name === 'Printed capacity')).toEqual({ name: 'Printed capacity', value: 1, unit: 'A h' });
    expect(said.values.find(({ criterion }) => criterion === 'battery')).toMatchObject({ unit: '%', value: 0 });
  });

  it('says what is printed only where that was said, and how much is lost only of a whole charge', () => {
    expect(chargeTest(judged(log()), undefined).values.some(({ name }) => name === 'Printed capacity')).toBe(false);
    expect(chargeTest(judged(log().slice(60)), 1).values.some(({ criterion }) => criterion)).toBe(false);
  });

  it('is bad with an alarm, whatever else is good', () => {
    const said = chargeTest(judged(log((row) => (row.seconds === 1980 ? { ...row, volts: 4.4 } : row))), 1);
    expect(said.verdict).toBe('bad');
    expect(said.text).toContain('Over-voltage after 33 min: 4.4 V, limit 4.25 V.');
  });
});

describe('what a log of a charge tells the diagnosis', () => {
  it('is a trial of charging, by the name that the model has for it', () => {
    expect(chargeEvidence(judged(log()), charging)).toEqual([{ kind: 'trial', function: 'charges', name: 'Charges', outcome: 'works' }]);
    expect(chargeEvidence(judged(log()), model)).toEqual([]);
    const loose = judged(log((row) => (row.seconds > 900 && row.seconds < 1200 ? { ...row, amps: 0 } : row)));
    expect(chargeEvidence(loose, charging)).toMatchObject([{ kind: 'trial', outcome: 'comes-and-goes' }]);
  });

  it('is a worn cell where it holds too little of what is printed', () => {
    expect(chargeEvidence(judged(log(), 2), model)).toEqual([{ kind: 'finding', place: 'cell', name: 'Cell', sees: 'worn' }]);
  });

  it('is nothing of charging after a discharge', () => {
    const empty = Array.from({ length: 60 }, (_, i) => ({ seconds: 60 * i, volts: 4.2 - 0.02 * i, amps: -1 }));
    expect(chargeEvidence(judged(empty), charging)).toEqual([]);
  });
});

describe('how a log was read', () => {
  const text = `made by hand\n\nTime [s];U [V];I [A]\n${log()
    .map(({ seconds, volts, amps }) => `${seconds};${volts.toFixed(2)};${amps.toFixed(2)}`)
    .join('\n')}`.replaceAll('.', ',');

  it('is said with delimiter, decimals, rows before, and each column with its unit', () => {
    const read = readChargeLog(text, split);
    if (!read.ok) throw new Error(read.code);
    expect(guessWords(read.guess)).toEqual([
      'Cells are parted by semicolons, decimals by a comma; 2 rows before the numbers, no row left out.',
      'Time: column 1 "Time [s]", read as s, by its name.',
      'Voltage: column 2 "U [V]", read as V, by its name.',
      'Current: column 3 "I [A]", read as A, by its name.',
    ]);
    expect(previewOf(text, read.guess, split, 2)).toEqual({
      names: ['Time [s]', 'U [V]', 'I [A]'],
      rows: [
        ['0', '3,10', '1,00'],
        ['30', '3,11', '1,00'],
      ],
    });
  });

  it('says what the clock did', () => {
    expect(clockWords({ kind: 'gap', row: 7, stepS: 1200 })).toBe(
      'At row 8 of the numbers 20 min are missing. What flowed meanwhile is reckoned straight from edge to edge.',
    );
  });
});

describe('a judged log of heat', () => {
  const heat = (peak: number) => {
    const rows = Array.from({ length: 200 }, (_, i) => `${2 * i},${Math.min(peak, 25 + i * 1.6).toFixed(1)}`);
    const read = readHeatLog(`s,°C\n${rows.join('\n')}`, split);
    if (!read.ok) throw new Error(read.code);
    const answer = judgeHeat(read.rows, 'SAC305');
    if (!answer.ok) throw new Error(answer.code);
    return heatTest(answer, 'SAC305');
  };

  it('is bad when the part got hotter than it bears or the solder never melted, and names the limit with its number', () => {
    expect(heat(270)).toMatchObject({ verdict: 'bad', text: expect.stringContaining('270 °C, at most 260 °C: missed.') });
    expect(heat(210)).toMatchObject({ verdict: 'bad', text: expect.stringContaining('210 °C, at least 220 °C: missed.') });
  });
});
