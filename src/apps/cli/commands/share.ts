import type { Command } from 'commander';
import { readShared } from '../../../bench/learning/read-shared.ts';
import { problemFor } from '../../../bench/words.ts';
import { numberIn } from '../add/add-command.ts';
import type { CliParts } from '../cli-parts.ts';
import { readText } from '../read-input.ts';
import { withSession, type Session } from '../session.ts';
import { EXIT, misuse, Stop } from '../stop.ts';

interface TakeOptions {
  readonly from: string;
  readonly weight: string;
}

/** Giving away what was learned of a model, and taking in what others have learned. */
export function shareCommands(program: Command, parts: CliParts): void {
  program
    .command('share')
    .argument('<model>', 'id of the model')
    .argument('<file>', 'name of the file')
    .description('writes what was learned of a model into a file to give away: no prices, no names, no photos')
    .addHelpText('after', '\nExample: salvor share tern-tn10 learned.json')
    .action((model: string, file: string, _options: unknown, command: Command) =>
      withSession(command, parts, (session) => share(session, model, file)),
    );
  program
    .command('take')
    .argument('<file>', 'a file made by salvor share')
    .description('takes in what another bench has learned of a model')
    .option('--from <words>', 'your own name for where it comes from', 'another bench')
    .option('--weight <share>', 'a job of theirs counts as so many of yours, up to 1', '0.5')
    .addHelpText('after', '\nExample: salvor take learned.json --from "the bench next door" --weight 0.3')
    .action((file: string, options: TakeOptions, command: Command) =>
      withSession(command, parts, (session) => takeIn(session, file, options)),
    );
}

async function share({ bench, parts, show }: Session, model: string, file: string): Promise<void> {
  const bundle = bench.sharedLearning(model);
  if (!bundle) throw misuse('no-such-model', { where: 'MODEL', detail: model });
  await parts.writeFile(file, new TextEncoder().encode(`${JSON.stringify(bundle, null, 2)}\n`)).catch(() => {
    throw new Stop(EXIT.store, problemFor('cannot-write', { where: 'FILE', detail: file }));
  });
  show({ file, numbers: bundle.numbers.length }, () => [
    `${bundle.numbers.length} learned numbers of ${bundle.model_name} are in ${file}.`,
  ]);
}

async function takeIn({ parts, note, show }: Session, file: string, { from, weight }: TakeOptions): Promise<void> {
  const read = readShared(await readText(parts, file), from, numberIn({ weight }, 'weight')!);
  if (!read.ok) throw new Stop(EXIT.refused, problemFor('bad-bundle', { where: 'FILE', detail: read.detail }));
  const noted = note([{ kind: 'learned-taken-in', body: { ...read.body } }]);
  show(noted, () => [
    `Took in ${read.body.numbers.length} numbers of ${read.body.model_id}; a job of theirs counts as ${read.body.weight}.`,
    'Next: salvor learned shows what they moved. salvor undo takes it back.',
  ]);
}
