import { describe, expect, it } from 'vitest';
import { judgeCharge, judgeHeat, readLog, type ChargeSample, type Role } from './index.ts';
import { clockIn, numberIn } from './logs/parse-cell.ts';
import { mendClock } from './logs/mend-clock.ts';

/** Enough of a CSV reader for cells without quotes. */
const split = (text: string, delimiter: string) => text.split('\n').map((line) => line.split(delimiter));
const read = (text: string, wanted: readonly Role[] = ['time', 'celsius'], columns = {}) => readLog(text, { wanted, split, columns });
const rows = (count: number, of: (i: number) => string): string => Array.from({ length: count }, (_, i) => of(i)).join('\n');

describe('cells of a log', () => {
  it('are numbers with a point or a comma, with thousands and with a unit', () => {
    expect(['3.7', '1,234.5', '-1e-3', '4.2 V', '25°C', '.5'].map((cell) => numberIn(cell, '.'))).toEqual([
      3.7, 1234.5, -1e-3, 4.2, 25, 0.5,
    ]);
    expect(['3,7', '1.234,5', '12'].map((cell) => numberIn(cell, ','))).toEqual([3.7, 1234.5, 12]);
    expect(['', 'OL', '3,7', '1.2.3'].map((cell) => numberIn(cell, '.'))).toEqual([undefined, undefined, undefined, undefined]);
    expect(numberIn('3.7', ',')).toBeUndefined();
  });

  it('are times with one colon or two, with and without a date', () => {
    expect(clockIn('2:05')).toEqual({ seconds: 125, clock: 'elapsed-or-day' });
    expect(clockIn('01:00:00,5')!.seconds).toBe(3600.5);
    const [iso, first, last, us] = ['2026-03-01T10:00:00', '2026/03/01 10:00:00', '01.03.2026 10:00', '03/21/2026 10:00:00'].map(
      (cell) => clockIn(cell)!.seconds,
    );
    expect([first, last].every((each) => each === iso)).toBe(true);
    expect((us! - iso!) / 86_400).toBe(20);
    expect(clockIn('ten')).toBeUndefined();
  });
});

describe('reading a log', () => {
  it('shows how it was read', () => {
    const found = read(`Time (min);Temp (°C)\n${rows(12, (i) => `${i},0;${20 + i},5`)}`);
    expect(found).toMatchObject({
      ok: true,
      guess: { delimiter: ';', decimal: ',', headerRows: 1, leftOut: 0, columns: [{ unit: 'min', from: 'header' }, { unit: '°C' }] },
    });
    expect(found.ok && found.rows[2]).toEqual({ seconds: 120, celsius: 22.5 });
  });

  it('takes commas for decimals where not one point stands, also with three digits behind each', () => {
    const log = readLog(`Time [s];U [V];I [A]\n${rows(12, (i) => `${10 * i};3,${700 + i};0,500`)}`, {
      wanted: ['time', 'volts', 'amps'],
      split,
    });
    expect(log).toMatchObject({ ok: true, guess: { decimal: ',' } });
    expect(log.ok && log.rows[3]).toEqual({ seconds: 30, volts: 3.703, amps: 0.5 });
  });

  it('takes columns as the person says over what the header says', () => {
    const text = `a,b,c\n${rows(12, (i) => `${i * 2},${20 + i},7`)}`;
    expect(read(text)).toMatchObject({ ok: false, code: 'column-unclear' });
    const found = read(text, ['time', 'celsius'], { time: 0, celsius: 1 });
    expect(found.ok && found.rows[1]).toEqual({ seconds: 2, celsius: 21 });
  });

  it.each([
    ['nothing', '', 'not-a-table'],
    ['prose', rows(20, () => 'the quick brown fox'), 'not-a-table'],
    ['three rows', `s,°C\n${rows(3, (i) => `${i},20.5`)}`, 'too-short'],
    ['a header that does not name the temperature', `s,mm,kg\n${rows(12, (i) => `${i},20.5,3`)}`, 'column-unclear'],
    ['a clock that stands', `s,°C\n${rows(12, () => '7,20.5')}`, 'no-time'],
    ['every other row broken', `s,°C,x\n${rows(24, (i) => (i % 2 ? `${i},ERR,1` : `${i},20.5,1`))}`, 'too-many-unreadable'],
  ])('refuses %s', (_, text, code) => {
    expect(read(text)).toMatchObject({ ok: false, code });
  });
});

describe('a clock', () => {
  const notes = (times: readonly number[], steady = true, ofDay = false) =>
    mendClock(times, ofDay, () => steady).notes.map(({ kind, row }) => `${kind} ${row}`);
  const run = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i * 10);

  it('that goes on has nothing to note', () => {
    expect(notes(run(0, 20))).toEqual([]);
  });

  it('that jumps has missing rows, or was set, by what was measured', () => {
    expect(notes([...run(0, 10), ...run(1000, 10)], false)).toEqual(['gap 10']);
    expect(notes([...run(0, 10), ...run(1000, 10)], true)).toEqual(['set-forward 10']);
  });

  it('that falls began anew, was set back, or passed midnight', () => {
    expect(notes([...run(0, 20), ...run(0, 10)])).toEqual(['reset 20']);
    expect(notes([...run(5000, 30), ...run(5100, 10)])).toEqual(['set-back 30']);
    expect(notes([...run(86_300, 10), ...run(0, 10)], true, true)).toEqual(['midnight 10']);
  });

  it('goes on after each of them', () => {
    const { seconds } = mendClock([...run(0, 5), ...run(0, 5), ...run(900, 5)], false, () => true);
    expect(seconds).toEqual(run(0, 15));
  });
});

describe('a log of heat', () => {
  const ramp = Array.from({ length: 20 }, (_, i) => ({ seconds: i * 3, celsius: 25 + i * 13 }));

  it('is not judged without its alloy, too short, or never hot', () => {
    expect(judgeHeat(ramp, undefined)).toEqual({ ok: false, code: 'alloy-not-said' });
    expect(judgeHeat(ramp.slice(0, 5), 'SAC305')).toEqual({ ok: false, code: 'too-short' });
    expect(
      judgeHeat(
        ramp.map((each) => ({ ...each, celsius: 40 })),
        'SAC305',
      ),
    ).toEqual({ ok: false, code: 'never-hot' });
  });

  it('that rises too fast and never cools misses those limits with numbers', () => {
    const found = judgeHeat(ramp, 'SAC305');
    const limit = (id: string) => (found.ok ? found.limits.find((each) => each.id === id)! : null);
    expect(limit('ramp-up')!.value).toBeCloseTo(13 / 3, 9);
    expect(limit('ramp-up')).toMatchObject({ passed: false, atMost: 3 });
    expect(limit('peak')).toMatchObject({ value: 272, passed: false, atMost: 260 });
    expect(limit('ramp-down')).toMatchObject({ value: 0, passed: true });
  });

  it('takes the peak of the part, and an alloy that the standard does not know by its own liquidus', () => {
    const peak = (alloy: 'SAC305' | 'Sn42Bi58', of?: number) => {
      const found = judgeHeat(ramp, alloy, of);
      return found.ok ? [found.limits[0]!.atMost, found.knownAlloy, found.limits[1]!.atLeast] : null;
    };
    expect(peak('SAC305', 245)).toEqual([245, true, 220]);
    expect(peak('Sn42Bi58')).toEqual([260, false, 138]);
  });
});

describe('a log of charge', () => {
  const flat = (volts: number, amps: number): ChargeSample[] => Array.from({ length: 30 }, (_, i) => ({ seconds: i * 10, volts, amps }));

  it('is not judged without current, too short, or of another number of cells', () => {
    expect(judgeCharge(flat(3.8, 0), { chemistry: 'li-ion-4.20' })).toEqual({ ok: false, code: 'no-current' });
    expect(judgeCharge(flat(3.8, 1).slice(0, 5), { chemistry: 'li-ion-4.20' })).toEqual({ ok: false, code: 'too-short' });
    expect(judgeCharge(flat(7.6, 1), { chemistry: 'li-ion-4.20' })).toEqual({ ok: false, code: 'not-this-chemistry' });
    expect(judgeCharge(flat(7.6, 1), { chemistry: 'li-ion-4.20', cells: 2 })).toMatchObject({ ok: true });
  });

  it('of a piece says at least how much, and does not call the cell worn for it', () => {
    const found = judgeCharge(flat(3.8, 1), { chemistry: 'li-ion-4.20', ratedAh: 2 });
    expect(found).toMatchObject({
      ok: true,
      whole: false,
      end: null,
      verdicts: { cell: { state: 'not-known' }, charger: { state: 'not-known' } },
    });
  });

  it('that ends at once when the charger is weak says so of the port', () => {
    const found = judgeCharge(flat(3.8, 0.2), { chemistry: 'li-ion-4.20', chargerA: 0.5 });
    expect(found.ok && found.verdicts.port).toMatchObject({ state: 'suspect', reason: 'current-too-small' });
  });
});
