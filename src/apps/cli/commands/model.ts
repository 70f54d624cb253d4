import type { Command } from 'commander';
import { modelIdFor, newModelDrafts, type NewModel } from '../../../bench/grow/new-model.ts';
import type { StartAnswers } from '../../../bench/events/index.ts';
import { problemFor } from '../../../bench/words.ts';
import { keepPhoto } from '../add/photo.ts';
import { numberIn, type Options } from '../add/add-command.ts';
import { readingIn } from '../add/evidence.ts';
import type { CliParts } from '../cli-parts.ts';
import { growthLines, pointLines } from '../print/growth-lines.ts';
import { withSession, type Draft, type Session } from '../session.ts';
import { EXIT, misuse, Stop } from '../stop.ts';

/** The commands below `salvor model`. */
export const modelGroup = (program: Command): Command =>
  program.commands.find((command) => command.name() === 'model') ??
  program.command('model').description('models that grow here: begin one, tell what you know of it, teach it known-good readings');

/** Beginning a model of one's own, and telling what one knows. */
export function modelCommands(program: Command, parts: CliParts): void {
  const group = modelGroup(program);
  const run =
    (work: (session: Session, args: readonly string[], options: Options) => Promise<void> | void) =>
    (...all: unknown[]): Promise<void> =>
      withSession(all.at(-1) as Command, parts, (session) => work(session, all.slice(0, -2) as string[], all.at(-2) as Options));
  group
    .command('new')
    .argument('<name>', 'what it is called')
    .description('begins a model: any pocket player as six answers leave it, or a copy of another model')
    .option('--power <kind>', 'battery, battery-and-charger or mains-supply', 'battery')
    .option('--volts <volts>', 'of its battery, all cells together')
    .option('--display <kind>', 'none, plain or lit', 'plain')
    .option('--slot <yes|no>', 'a slot for cartridges, tapes or cards', 'yes')
    .option('--sound <kind>', 'none, speaker or socket', 'speaker')
    .option('--charging <yes|no>', 'charges its own battery', 'no')
    .option('--copy-of <model>', 'a copy of that model instead')
    .option('--revision <text>', 'as printed on its board', '')
    .option('--front <file>', 'photo of the front of its board')
    .option('--back <file>', 'photo of the back')
    .addHelpText('after', '\nExample: salvor model new "Reed R1" --volts 3 --slot no --front board.jpg')
    .action(run(begin));
  group
    .command('tell')
    .argument('<model>', 'id of a model that grows here')
    .argument(
      '<section>',
      'head, blocks, slots, functions, faults, accessories, points, checks, remedies, parts, panels, fasteners, steps, circuit',
    )
    .argument('<id>', 'entry of the section; in head and circuit the field')
    .argument('<value>', 'a number, words, or JSON; null takes it away')
    .option('--field <name>', 'one field of the entry; else the value is the whole entry as JSON')
    .option('--measured', 'it was measured, not only known')
    .description('tells one place of a model')
    .addHelpText('after', '\nExample: salvor model tell reed-r1 faults switch-dirty 0.2 --field rate')
    .action(run(tell));
  group
    .command('teach')
    .argument('<model>', 'id of a model that grows here')
    .argument('<board>', 'your name for the known-good board')
    .argument('<point>', 'point of the model')
    .argument('<value>', 'as the meter shows it: 3.28, 4k7, OL')
    .option('--revision <text>', 'of that board', '')
    .description('teaches what a known-good board shows at a point')
    .addHelpText('after', '\nExample: salvor model teach reed-r1 good-1 BATTERY-V 3.05')
    .action(run(teach));
  group
    .command('teach-unit')
    .argument('<unit>', 'id or stock number of a unit that is known to be good')
    .description('teaches its model what was measured on it since the last work')
    .addHelpText('after', '\nExample: salvor model teach-unit 7')
    .action(run(teachUnit));
  group
    .command('grown')
    .argument('<model>', 'id of the model')
    .description('shows how a model grew, and what its known-good boards show')
    .addHelpText('after', '\nExample: salvor model grown reed-r1')
    .action(run(grown));
}

async function begin(session: Session, [name = '']: readonly string[], options: Options): Promise<void> {
  const { bench } = session;
  const id = modelIdFor(name, (taken) => bench.model(taken) !== null);
  const photo = async (side: 'front' | 'back') => (options[side] === undefined ? {} : { [side]: await keepPhoto(session, options[side]) });
  const photos = { ...(await photo('front')), ...(await photo('back')) };
  const from = options['copyOf'] === undefined ? { answers: answersIn(options) } : { copy_of: options['copyOf'] };
  const model: NewModel = { name, revision: options['revision'] ?? '', currency: bench.state().settings.currency, from, photos };
  const noted = session.note(newModelDrafts(id, model) as readonly Draft[]);
  session.show({ ...noted, model_id: id }, () => [
    `The model ${name} (${id}) is begun, and can be used at once.`,
    `Next: salvor model grown ${id} shows what it knows; salvor model tell and salvor model teach add to it.`,
  ]);
}

/** What was not understood is told by the schema of the event. */
function answersIn(options: Options): StartAnswers {
  const { power, display, sound } = options;
  const [slot, charging] = [isYes(options, 'slot'), isYes(options, 'charging')];
  return { power, cell_volts: numberIn(options, 'volts') ?? null, display, slot, sound, charging } as StartAnswers;
}

function isYes(options: Options, name: string): boolean {
  const text = options[name];
  if (text !== 'yes' && text !== 'no')
    throw misuse('bad-usage', { where: `--${name}`, detail: `--${name} takes yes or no, not "${text}"` });
  return text === 'yes';
}

function tell({ note, show }: Session, [model_id = '', section = '', id = '', text = '']: readonly string[], options: Options): void {
  const field = options['field'] === undefined ? {} : { field: options['field'] };
  const source = options['measured'] ? 'measured' : 'typed';
  const noted = note([{ kind: 'model-fact-set', body: { model_id, section, id, ...field, value: valueIn(text), source } }]);
  show(noted, () => ['Noted.', `Next: salvor model grown ${model_id} shows it among the rest.`]);
}

/** JSON where it is, else the words themselves. */
function valueIn(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return text;
  }
}

function teach(session: Session, [model_id = '', board = '', point = '', text = '']: readonly string[], options: Options): void {
  const { bench, note, show } = session;
  const reading = readingIn(session, model_id, point, text);
  const noted = note([{ kind: 'model-reading-taught', body: { model_id, board, revision: options['revision'], point, ...reading } }]);
  show(noted, () => pointLines(bench.growth(model_id)!.points.filter((each) => each.point === point)));
}

function teachUnit({ bench, item, note, show }: Session, [name = '']: readonly string[]): void {
  const { id, modelId, name: itemName } = item(name);
  const can = bench.item(id)!.teach;
  if (!can || can.readings.length === 0) throw new Stop(EXIT.refused, problemFor('nothing-to-teach', { where: 'UNIT', detail: itemName }));
  const noted = note(
    can.readings.map(({ point, mode, value }) => ({
      kind: 'model-reading-taught' as const,
      body: { model_id: modelId, board: can.board, revision: can.revision, point, mode, value, item_id: id },
    })),
  );
  const points = new Set(can.readings.map(({ point }) => point));
  show(noted, () => pointLines(bench.growth(modelId)!.points.filter(({ point }) => points.has(point))));
}

function grown({ bench, show }: Session, [id = '']: readonly string[]): void {
  const growth = bench.growth(id);
  if (!growth) throw misuse('no-such-model', { where: 'MODEL', detail: id });
  show(growth, () => growthLines(growth));
}
