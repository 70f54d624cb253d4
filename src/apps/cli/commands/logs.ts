import { InvalidArgumentError, type Command } from 'commander';
import {
  alarmWords,
  chargeRefusalWords,
  chargeTest,
  clockWords,
  guessWords,
  heatRefusalWords,
  heatSourceWords,
  heatTest,
  limitWords,
  PHASE_WORDS,
  readChargeLog,
  readHeatLog,
  readRefusalWords,
  valueWords,
  verdictLines,
  type ChargeLog,
  type ColumnsSaid,
  type HeatLog,
  type TestSaid,
} from '../../../bench/logs/index.ts';
import { ALLOYS, CHEMISTRIES, judgeCharge, judgeHeat, type Alloy, type ChemistryId, type Role } from '../../../core/rework/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { readText } from '../read-input.ts';
import { splitRows } from '../split-rows.ts';
import { withSession } from '../session.ts';
import { misuse } from '../stop.ts';

interface LogOptions {
  readonly columns?: ColumnsSaid;
  readonly item?: string;
}

interface ChargeOptions extends LogOptions {
  readonly chemistry?: string;
  readonly cells: number;
  readonly printedMah?: number;
  readonly chargerMa?: number;
}

interface HeatOptions extends LogOptions {
  readonly alloy?: string;
  readonly peak?: number;
}

const COLUMNS = 'which column is which, counted from 1: time=1,volts=3,amps=2';
const ITEM = 'notes it with this unit (id or stock number)';

/** Logs of charge and of heat from any meter, judged. */
export function logCommands(program: Command, parts: CliParts): void {
  program
    .command('charge-log')
    .argument('<file>', 'CSV with time, voltage and current')
    .description('reads a log of a charge or discharge: phases, capacity, resistance, alarms, and a verdict on port, charger and cell')
    .option('--chemistry <kind>', `kind of cell, as its label has it: ${Object.keys(CHEMISTRIES).join(', ')}`)
    .option('--cells <count>', 'cells in series', positive, 1)
    .option('--printed-mah <number>', 'capacity that is printed on it, mA h', positive)
    .option('--charger-ma <number>', 'what the charger gives, mA', positive)
    .option('--columns <columns>', COLUMNS, columnsIn)
    .option('--item <item>', ITEM)
    .addHelpText('after', '\nExample: salvor charge-log night.csv --chemistry li-ion-4.20 --printed-mah 1200')
    .action((file: string, options: ChargeOptions, command: Command) => charge(parts, file, options, command));
  program
    .command('heat-log')
    .argument('<file>', 'CSV with time and temperature')
    .description('reads a log of temperatures: each limit of J-STD-020 for the solder, passed or missed with its number')
    .option('--alloy <alloy>', `solder: ${Object.keys(ALLOYS).join(', ')}`)
    .option('--peak <celsius>', 'what the part bears, °C, where its data sheet says it', positive)
    .option('--columns <columns>', COLUMNS.replace(',volts=3,amps=2', ',celsius=2'), columnsIn)
    .option('--item <item>', ITEM)
    .addHelpText('after', '\nExample: salvor heat-log board.csv --alloy SAC305')
    .action((file: string, options: HeatOptions, command: Command) => heat(parts, file, options, command));
}

async function charge(parts: CliParts, file: string, options: ChargeOptions, command: Command): Promise<void> {
  const log = taken(readChargeLog(await readText(parts, file), splitRows, options.columns), file);
  const chemistry = known('--chemistry', options.chemistry, CHEMISTRIES) as ChemistryId | undefined;
  const gaps = log.clock.filter(({ kind }) => kind === 'gap').map(({ row }) => ({ row }));
  const ratedAh = options.printedMah === undefined ? undefined : options.printedMah / 1000;
  const judged = judgeCharge(log.rows, {
    chemistry,
    cells: options.cells,
    gaps,
    ...(ratedAh === undefined ? {} : { ratedAh }),
    ...(options.chargerMa === undefined ? {} : { chargerA: options.chargerMa / 1000 }),
  });
  if (!judged.ok) throw misuse('bad-usage', { where: '--chemistry', detail: chargeRefusalWords(judged.code).replace(/\.$/, '') });
  const said = chargeTest(judged, ratedAh);
  const lines = [
    ...verdictLines(judged.verdicts),
    ...judged.alarms.map((alarm) => `Alarm: ${alarmWords(alarm)}`),
    `Phases: ${judged.phases.map(({ kind, seconds }) => `${PHASE_WORDS[kind].toLowerCase()} ${Math.round(seconds / 60)} min`).join(', ')}.`,
  ];
  await show(parts, command, { test: 'charge-log', log, said, lines, answer: judged, item: options.item });
}

async function heat(parts: CliParts, file: string, options: HeatOptions, command: Command): Promise<void> {
  const log = taken(readHeatLog(await readText(parts, file), splitRows, options.columns), file);
  const alloy = known('--alloy', options.alloy, ALLOYS) as Alloy | undefined;
  const judged = judgeHeat(log.rows, alloy, options.peak);
  if (!judged.ok || alloy === undefined)
    throw misuse('bad-usage', {
      where: '--alloy',
      detail: heatRefusalWords(judged.ok ? 'alloy-not-said' : judged.code).replace(/\.$/, ''),
    });
  const lines = [...judged.limits.map(limitWords), heatSourceWords(judged, alloy)];
  await show(parts, command, { test: 'heat-log', log, said: heatTest(judged, alloy), lines, answer: judged, item: options.item });
}

interface Shown {
  readonly test: 'charge-log' | 'heat-log';
  readonly log: Extract<ChargeLog | HeatLog, { ok: true }>;
  readonly said: TestSaid;
  readonly lines: readonly string[];
  readonly answer: object;
  readonly item: string | undefined;
}

/** Says what was found, and notes it where a unit is named. */
async function show(parts: CliParts, command: Command, { test, log, said, lines, answer, item }: Shown): Promise<void> {
  const isJson = Boolean(command.optsWithGlobals().json);
  const read = [...guessWords(log.guess), ...log.clock.map(clockWords)];
  if (item === undefined) {
    const all = [...read, '', ...lines, ...(test === 'charge-log' ? said.values.map((value) => `  ${valueWords(value)}`) : [])];
    parts.out(isJson ? JSON.stringify({ read, ...answer }, null, 2) : all.join('\n'));
    return;
  }
  await withSession(command, parts, (session) => {
    const body = { item_id: session.item(item).id, test, verdict: said.verdict, text: said.text, values: [...said.values] };
    const noted = session.note([{ kind: 'test-done', body }]);
    session.show({ ...noted, read, ...answer }, () => [...read, '', ...lines, `Noted with ${item}.`]);
  });
}

function taken<L extends ChargeLog | HeatLog>(log: L, file: string): Extract<L, { ok: true }> {
  if (log.ok) return log as Extract<L, { ok: true }>;
  throw misuse('bad-log', { where: file, detail: readRefusalWords(log.code, log.detail) });
}

function known(flag: string, word: string | undefined, words: object): string | undefined {
  if (word === undefined || Object.hasOwn(words, word)) return word;
  throw misuse('bad-usage', { where: flag, detail: `"${word}" is not known; ${flag} takes ${Object.keys(words).join(', ')}` });
}

function positive(text: string): number {
  const value = Number(text);
  if (!(value > 0)) throw new InvalidArgumentError(`It takes a number above nought, not "${text}".`);
  return value;
}

const ROLES: readonly Role[] = ['time', 'volts', 'amps', 'celsius'];

function columnsIn(text: string): ColumnsSaid {
  const pairs = text.split(',').map((pair) => pair.split('='));
  const sound = pairs.every(([role, place]) => ROLES.includes(role as Role) && /^[1-9]\d?$/.test(place ?? ''));
  if (!sound) throw new InvalidArgumentError(`Write it as time=1,volts=2, with ${ROLES.join(', ')}.`);
  return Object.fromEntries(pairs.map(([role, place]) => [role, Number(place) - 1]));
}
