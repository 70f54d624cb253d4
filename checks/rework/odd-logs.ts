import Papa from 'papaparse';
import { randomStream } from '../../src/core/numeric/index.ts';
import {
  judgeCharge,
  judgeHeat,
  readLog,
  type Alloy,
  type ChargeSample,
  type ChargeQuestion,
  type ReadLog,
  type SplitRows,
} from '../../src/core/rework/index.ts';
import { chargeOf, dischargeOf, type Charging } from './simulated-cell.ts';

/** One log as a meter or a person might hand it over, and what must be said of it. */
export interface OddLog {
  readonly name: string;
  readonly text: string;
  /** What is wrong with the answer; empty when it is right. */
  readonly wrong: () => readonly string[];
}

export const split: SplitRows = (text, delimiter) => Papa.parse<string[]>(text, { delimiter, newline: '\n' }).data;

/** A cell and its charger drawn from a seed, so that what is tuned on some is measured on others. */
interface Drawn {
  readonly seed: string;
  readonly charging: Charging & { readonly stepS: number };
  /** What the cell took, A h, by the simulation's own steps. */
  readonly ah: number;
}

function draw(seed: string): Drawn {
  const next = randomStream(seed);
  const capacityAh = 1 + 2 * next();
  const amps = capacityAh * (0.35 + 0.25 * next());
  const ohms = (0.1 + 0.08 * next()) / capacityAh;
  const stepS = [5, 10, 15][Math.floor(3 * next())]!;
  const made = { capacityAh, amps, fullV: 4.2, endA: amps / 10, ohms, stepS };
  return { seed, charging: made, ah: ahOf(chargeOf(made), stepS) };
}

const ahOf = (rows: readonly ChargeSample[], stepS: number): number =>
  rows.reduce((sum, { amps }) => sum + (Math.abs(amps) * stepS) / 3600, 0);

type Cells = readonly (string | number)[];
const lines = (header: Cells | null, rows: readonly Cells[], delimiter = ','): string =>
  [...(header ? [header] : []), ...rows].map((row) => row.join(delimiter)).join('\n') + '\n';

/** With the noise and the digits of a cheap meter. */
const metered = (log: readonly ChargeSample[], seed: string): ChargeSample[] => {
  const next = randomStream(seed);
  return log.map((row) => ({
    ...row,
    volts: Number((row.volts + 0.002 * (next() - 0.5)).toFixed(3)),
    amps: Number((row.amps === 0 ? 0 : row.amps + 0.002 * (next() - 0.5)).toFixed(3)),
  }));
};
const usual = (drawn: Drawn, changes: Partial<Charging> = {}): ChargeSample[] =>
  metered(chargeOf({ ...drawn.charging, ...changes }), drawn.seed);
const plain = (log: readonly ChargeSample[]): string =>
  lines(
    ['time (s)', 'voltage (V)', 'current (A)'],
    log.map((row) => [row.seconds, row.volts, row.amps]),
  );

const comma = (value: number, digits = 3): string => value.toFixed(digits).replace('.', ',');
const clock = (seconds: number): string =>
  [Math.floor(seconds / 3600) % 24, Math.floor(seconds / 60) % 60, seconds % 60].map((part) => String(part).padStart(2, '0')).join(':');

type Read = ReadLog<'time' | 'volts' | 'amps'>;
const read = (text: string): Read => readLog(text, { wanted: ['time', 'volts', 'amps'], split });

const near = (what: string, value: number | undefined, truth: number, within: number): string[] =>
  value !== undefined && Math.abs(value - truth) <= within ? [] : [`${what} is ${value}, not ${truth} ± ${within}`];
const same = (what: string, value: unknown, truth: unknown): string[] =>
  JSON.stringify(value) === JSON.stringify(truth) ? [] : [`${what} is ${JSON.stringify(value)}, not ${JSON.stringify(truth)}`];

interface Expected {
  readonly notes: readonly string[];
  readonly ah?: number;
  readonly within?: number;
  readonly alarms?: readonly string[];
  readonly charger?: string;
  readonly port?: string;
  readonly cell?: string;
  readonly phases?: readonly string[];
  readonly columns?: readonly string[];
  readonly question?: Partial<ChargeQuestion>;
  readonly ohms?: number;
}

/** Read, judge, and compare with what the simulated cell did. */
function charging(drawn: Drawn, name: string, text: string, expected: Expected): OddLog {
  return {
    name,
    text,
    wrong: () => {
      const log = read(text);
      if (!log.ok) return [`refused: ${log.code}`];
      const gaps = log.clock.filter(({ kind }) => kind === 'gap').map(({ row }) => ({ row }));
      const { capacityAh: ratedAh, amps: chargerA } = drawn.charging;
      const found = judgeCharge(log.rows, { chemistry: 'li-ion-4.20', ratedAh, chargerA, gaps, ...expected.question });
      if (!found.ok) return [`refused: ${found.code}`];
      const kinds = log.clock.map(({ kind }) => kind);
      return [
        ...same('the clock', kinds, expected.notes),
        ...(expected.columns
          ? same(
              'the columns',
              log.guess.columns.map(({ role, unit }) => `${role} ${unit}`),
              expected.columns,
            )
          : []),
        ...near('the capacity', found.capacityAh, expected.ah ?? drawn.ah, (expected.within ?? 0.005) * drawn.charging.capacityAh),
        ...same(
          'the alarms',
          found.alarms.map(({ kind }) => kind),
          expected.alarms ?? [],
        ),
        ...same(
          'the phases',
          found.phases.map(({ kind }) => kind),
          expected.phases ?? ['constant-current', 'constant-voltage', 'rest'],
        ),
        ...same('the charger', found.verdicts.charger.reason, expected.charger ?? 'ends-as-it-should'),
        ...same('the port', found.verdicts.port.reason, expected.port ?? 'current-steady'),
        ...same('the cell', found.verdicts.cell.reason, expected.cell ?? 'capacity-good'),
        ...(expected.ohms === undefined ? [] : near('the resistance', found.resistance?.ohms, expected.ohms, 0.08 * expected.ohms)),
      ];
    },
  };
}

const refusal = (name: string, text: string, code: string): OddLog => ({
  name,
  text,
  wrong: () => {
    const log = read(text);
    return same('the answer', log.ok ? 'read' : log.code, code);
  },
});

function commas(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row) => [comma(row.seconds, 1), comma(row.volts), comma(row.amps)]);
  return charging(drawn, 'decimal commas between semicolons', lines(['Time [s]', 'U [V]', 'I [A]'], rows, ';'), { notes: [] });
}

function gap(drawn: Drawn): OddLog {
  const rows = usual(drawn).filter(({ seconds }) => seconds <= 2000 || seconds > 3200);
  return charging(drawn, 'twenty minutes are missing', plain(rows), { notes: ['gap'], within: 0.01 });
}

function reset(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row, i) => ({ ...row, seconds: i < 300 ? row.seconds : row.seconds - 300 * drawn.charging.stepS }));
  return charging(drawn, 'the clock began anew', plain(rows), { notes: ['reset'] });
}

function setForward(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row, i) => ({ ...row, seconds: i < 250 ? row.seconds : row.seconds + 3600 }));
  return charging(drawn, 'the clock was set an hour forward', plain(rows), { notes: ['set-forward'] });
}

function setBack(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row, i) => ({ ...row, seconds: 7200 + (i < 300 ? row.seconds : row.seconds - 600) }));
  return charging(drawn, 'the clock was set ten minutes back', plain(rows), { notes: ['set-back'] });
}

function midnight(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row) => [clock(row.seconds + 82_000), row.volts, row.amps]);
  return charging(drawn, 'past midnight by the time of day', lines(['Time', 'V', 'A'], rows), { notes: ['midnight'] });
}

function swapped(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row) => [(row.amps * 1000).toFixed(0), (row.volts * 1000).toFixed(0), row.seconds / 60]);
  const header = ['Current (mA)', 'Voltage (mV)', 'Elapsed (min)'];
  return charging(drawn, 'columns in another order and other units', lines(header, rows, '\t'), {
    notes: [],
    columns: ['amps mA', 'volts mV', 'time min'],
  });
}

function misnamed(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row) => [row.seconds, row.amps, row.volts]);
  return refusal('volts and amperes named the wrong way round', lines(['time s', 'V', 'A'], rows), 'columns-look-swapped');
}

function commaBoth(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row) => [row.seconds, comma(row.volts), comma(row.amps)]);
  return refusal('commas between and inside the numbers', lines(['time s', 'V', 'A'], rows), 'comma-is-both');
}

function broken(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row, i): Cells => (i % 40 === 7 ? [row.seconds, 'OVLD', ''] : [row.seconds, row.volts, row.amps]));
  const text = `Logger 7\nstarted by hand\n\n${lines(
    ['sec', 'volt', 'amp', 'mAh'],
    rows.map((row) => [...row, 0]),
  )}\nend of log\n`;
  return charging(drawn, 'rows without numbers, words before and after', text, { notes: [] });
}

function nameless(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row) => [row.amps, row.volts, row.seconds]);
  return charging(drawn, 'no header at all', lines(null, rows), { notes: [], columns: ['time s', 'volts V', 'amps A'] });
}

function unitsInCells(drawn: Drawn): OddLog {
  const rows = usual(drawn).map((row) => [
    `"${comma(row.seconds / 60, 4)} min"`,
    `"${comma(row.volts)} V"`,
    `"${comma(row.amps * 1000, 0)} mA"`,
  ]);
  return charging(drawn, 'numbers in quotes with their units', lines(['Time', 'Voltage', 'Current (A)'], rows, ';'), {
    notes: [],
    columns: ['time in the cells', 'volts in the cells', 'amps in the cells'],
  });
}

function neverEnds(drawn: Drawn): OddLog {
  const rows = usual(drawn, { endA: 0, leakA: 0.06 * drawn.charging.amps, minutes: 420 });
  return charging(drawn, 'a charger that does not end', plain(rows), {
    notes: [],
    ah: ahOf(rows, drawn.charging.stepS),
    within: 0.01,
    alarms: ['no-termination'],
    phases: ['constant-current', 'constant-voltage'],
    charger: 'no-termination',
  });
}

function loosePort(drawn: Drawn): OddLog {
  const loose = usual(drawn).flatMap((row) => {
    const away = row.seconds >= 1000 && row.seconds < 1100;
    return [away ? { ...row, amps: 0, volts: row.volts - row.amps * drawn.charging.ohms } : row];
  });
  return charging(drawn, 'a port that lets go for a while', plain(loose), {
    notes: [],
    ah: drawn.ah - (drawn.charging.amps * 100) / 3600,
    within: 0.01,
    phases: ['constant-current', 'rest', 'constant-current', 'constant-voltage', 'rest'],
    port: 'current-drops-out',
  });
}

function tooLow(drawn: Drawn): OddLog {
  const rows = usual(drawn, { startSoc: -0.04, gentleA: drawn.charging.amps / 10 });
  return charging(drawn, 'a cell found too low', plain(rows), {
    notes: [],
    ah: ahOf(rows, drawn.charging.stepS),
    alarms: ['found-too-low'],
    phases: ['gentle', 'constant-current', 'constant-voltage', 'rest'],
    cell: 'found-too-low',
  });
}

function emptied(drawn: Drawn): OddLog {
  const { capacityAh } = drawn.charging;
  const rows = metered(dischargeOf(0.7 * capacityAh, 0.2 * capacityAh, 0.2 / capacityAh, 3.0, capacityAh), drawn.seed).map((row) => ({
    ...row,
    amps: -row.amps,
  }));
  return charging(drawn, 'a discharge with pulses, written as positive', plain(rows), {
    notes: [],
    ah: ahOf(rows, 1),
    within: 0.01,
    phases: ['discharge'],
    charger: 'not-seen-in-a-discharge',
    port: 'not-seen-in-a-discharge',
    cell: 'capacity-worn',
    ohms: 0.2 / capacityAh,
  });
}

/** Temperature of a board under hot air by time, °C: up to `soak` and `peak` by straight lines. */
function heated(peak: number, aboveS: number): { seconds: number; celsius: number }[] {
  const points = [
    [0, 25],
    [90, 150],
    [180, 200],
    [200, 217],
    [200 + aboveS / 2, peak],
    [200 + aboveS, 217],
    [200 + aboveS + 60, 60],
  ] as const;
  const at = (seconds: number): number => {
    const i = points.findIndex(([end]) => end >= seconds);
    const [[t0, c0], [t1, c1]] = [points[Math.max(0, i - 1)]!, points[i]!];
    return t1 === t0 ? c1 : c0 + ((c1 - c0) * (seconds - t0)) / (t1 - t0);
  };
  return Array.from({ length: Math.floor(points.at(-1)![0] / 2) + 1 }, (_, i) => ({ seconds: i * 2, celsius: at(i * 2) }));
}

function heat(name: string, text: string, alloy: Alloy, missed: readonly string[], peak: number): OddLog {
  return {
    name,
    text,
    wrong: () => {
      const log = readLog(text, { wanted: ['time', 'celsius'], split });
      if (!log.ok) return [`refused: ${log.code}`];
      const found = judgeHeat(log.rows, alloy);
      if (!found.ok) return [`refused: ${found.code}`];
      return [
        ...same(
          'the limits missed',
          found.limits.filter(({ passed }) => !passed).map(({ id }) => id),
          missed,
        ),
        ...near('the peak', found.limits.find(({ id }) => id === 'peak')!.value, peak, 0.5),
      ];
    },
  };
}

const fahrenheit = (): OddLog =>
  heat(
    'a thermometer in °F with decimal commas',
    lines(
      ['t', 'Probe °F'],
      heated(245, 92).map(({ seconds, celsius }) => [comma(seconds, 0), comma(celsius * 1.8 + 32, 1)]),
      ';',
    ),
    'SAC305',
    [],
    245,
  );

const tooHot = (): OddLog =>
  heat(
    'too hot for too long, times as minutes and seconds',
    lines(
      ['min:sec', 'Temp'],
      heated(270, 200).map(({ seconds, celsius }) => [
        `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`,
        celsius.toFixed(1),
      ]),
    ),
    'SAC305',
    ['peak', 'above-liquidus'],
    270,
  );

/** All odd logs, of the cell and charger of a seed. */
export const oddLogs = (seed: string): OddLog[] =>
  [
    commas,
    gap,
    reset,
    setForward,
    setBack,
    midnight,
    swapped,
    misnamed,
    commaBoth,
    broken,
    nameless,
    unitsInCells,
    neverEnds,
    loosePort,
    tooLow,
    emptied,
    fahrenheit,
    tooHot,
  ].map((make) => make(draw(seed)));
