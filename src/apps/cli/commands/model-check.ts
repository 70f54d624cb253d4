import type { Command } from 'commander';
import type { GrownModel } from '../../../bench/grow/grown-model.ts';
import type { Model } from '../../../bench/models/index.ts';
import { importPlacement, type PlacementImport } from '../../../bench/netting/index.ts';
import { LENGTH_UNITS, netlistText, PLACEMENT_FIELDS, type ColumnMapping, type LengthUnit } from '../../../core/netting/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { csvLines } from '../csv-lines.ts';
import { checkLines } from '../print/check-lines.ts';
import { readText } from '../read-input.ts';
import { withSession, type Session } from '../session.ts';
import { modelGroup } from './model.ts';
import { misuse } from '../stop.ts';

/** The check of a model, and its netlist and placement in and out. */
export function modelCheckCommands(program: Command, parts: CliParts): void {
  const group = modelGroup(program);
  group
    .command('check')
    .argument('<model>', 'name of the model')
    .description('says what a model can do now, which points would help most, and where its netlist disagrees with good boards')
    .option('--seconds <n>', 'to look for mistakes in the netlist', '30')
    .addHelpText('after', '\nExample: salvor model check tern-tn20 --seconds 60')
    .action((id: string, options: { readonly seconds: string }, command: Command) =>
      withSession(command, parts, (session) => check(session, id, Number(options.seconds))),
    );
  group
    .command('netlist')
    .argument('<model>', 'name of the model')
    .description('writes the netlist of a model as SPICE text, or takes one over into a model that grows here')
    .option('--out <file>', 'the file to write; else it is shown')
    .option('--take <file>', 'the netlist to take over; it may hold only the power tree')
    .addHelpText('after', '\nExample: salvor model netlist tern-tn20')
    .action((id: string, options: NetlistOptions, command: Command) =>
      withSession(command, parts, (session) => netlist(session, id, options)),
    );
  group
    .command('placement')
    .argument('<model>', 'a model that grows here')
    .argument('<file>', 'table of places as CSV, from any program')
    .description('says which column of a table of places is what and what does not go together, and takes it over with --take')
    .option('--columns <list>', `which column holds what, counted from 1: ref=1,x=3,y=4 (${PLACEMENT_FIELDS.join(', ')})`)
    .option('--unit <unit>', Object.keys(LENGTH_UNITS).join(', '))
    .option('--mirrored-back', 'the back is counted as one looks at the back')
    .option('--take', 'take the parts over')
    .addHelpText('after', '\nExample: salvor model placement reed-r1 places.csv --columns ref=1,x=4,y=5 --take')
    .action((id: string, file: string, options: PlacementOptions, command: Command) =>
      withSession(command, parts, (session) => placement(session, id, file, options)),
    );
}

interface NetlistOptions {
  readonly out?: string;
  readonly take?: string;
}

interface PlacementOptions {
  readonly columns?: string;
  readonly unit?: string;
  readonly mirroredBack?: boolean;
  readonly take?: boolean;
}

function check({ bench, parts, show }: Session, id: string, seconds: number): void {
  if (!(seconds > 0)) throw misuse('bad-usage', { where: '--seconds', detail: '--seconds takes a number above 0' });
  const until = parts.clock.now().getTime() + 1000 * seconds;
  const view = bench.checkModel(id, () => parts.clock.now().getTime() > until);
  if (!view) throw misuse('no-such-model', { where: 'MODEL', detail: id });
  show(view, () => checkLines(view));
}

async function netlist(session: Session, id: string, { out, take }: NetlistOptions): Promise<void> {
  const { parts, show } = session;
  if (take !== undefined) {
    growing(session, id);
    const text = await readText(parts, take);
    session.note([{ kind: 'model-netlist-set', body: { model_id: id, text, from: 'imported' } }]);
    return show({ model_id: id, taken: take }, () => [`Took ${take} over. Look at it with: salvor model check ${id}`]);
  }
  const model = modelNamed(session, id);
  if (!model.circuit) throw misuse('no-circuit', { where: 'MODEL', detail: id });
  const text = netlistText(model.circuit.netlist);
  if (out === undefined) return show({ model_id: id, netlist: text }, () => text.trimEnd().split('\n'));
  await parts.writeFile(out, new TextEncoder().encode(text)).catch(() => {
    throw misuse('cannot-write', { detail: out });
  });
  show({ file: out }, () => [`Wrote ${out}: ${model.circuit!.netlist.parts.length} parts.`]);
}

async function placement(session: Session, id: string, file: string, options: PlacementOptions): Promise<void> {
  const { parts, show } = session;
  const lines = csvLines(await readText(parts, file));
  const question = { model: modelNamed(session, id), grown: growing(session, id), lines, backIsMirrored: options.mirroredBack ?? false };
  const guessed = importPlacement(question);
  const found = importPlacement({ ...question, mapping: corrected(guessed.mapping, options) });
  const taken = options.take === true && found.problems.length === 0 && found.parts.length > 0;
  if (taken) session.note([{ kind: 'model-parts-placed', body: { model_id: id, parts: found.parts } }]);
  show({ ...found, taken }, () => placementLines(found, taken));
}

/** The mapping with the columns that the person named, counted from 1. */
function corrected(mapping: ColumnMapping, { columns, unit }: PlacementOptions): ColumnMapping {
  const named = (columns ?? '').split(',').flatMap((pair) => {
    if (pair.trim() === '') return [];
    const [field, number] = pair.trim().split('=');
    const known = PLACEMENT_FIELDS.find((each) => each === field);
    if (!known || !/^[1-9]\d{0,2}$/.test(number ?? ''))
      throw misuse('bad-usage', { where: '--columns', detail: `--columns takes pairs such as ref=1,x=3, not "${pair}"` });
    return [[known, Number(number) - 1] as const];
  });
  if (unit !== undefined && !Object.hasOwn(LENGTH_UNITS, unit))
    throw misuse('bad-usage', { where: '--unit', detail: `--unit takes ${Object.keys(LENGTH_UNITS).join(', ')}, not "${unit}"` });
  return {
    ...mapping,
    columns: { ...mapping.columns, ...Object.fromEntries(named) },
    ...(unit === undefined ? {} : { unit: unit as LengthUnit }),
  };
}

function placementLines({ mapping, parts, problems, mismatches }: PlacementImport, taken: boolean): string[] {
  const columns = PLACEMENT_FIELDS.flatMap((field) =>
    mapping.columns[field] === undefined ? [] : [`${field}=${mapping.columns[field] + 1}`],
  );
  return [
    `Columns ${columns.join(', ')}; lengths in ${mapping.unit}; ${mapping.headerRows} rows of header.`,
    ...problems.map(({ line, field, message, next }) => `Line ${line}, ${field}: ${message}. ${next}`),
    ...mismatches.flatMap(({ text, mends }) => [text, ...mends.map((mend) => `  ${mend}`)]),
    taken
      ? `Took ${parts.length} parts over.`
      : `${parts.length} parts; nothing is taken over${problems.length > 0 ? ' before the lines above are right' : ' without --take'}.`,
  ];
}

function modelNamed({ bench }: Session, id: string): Model {
  const model = bench.model(id);
  if (!model) throw misuse('no-such-model', { where: 'MODEL', detail: id });
  return model;
}

function growing(session: Session, id: string): GrownModel {
  modelNamed(session, id);
  const grown = session.bench.state().grown.get(id);
  if (!grown) throw misuse('not-growing', { where: 'MODEL', detail: id });
  return grown;
}
