import type { Command } from 'commander';
import { saidOf } from '../../../bench/grow/fact-text.ts';
import { factsToTake, mergeModels, type Merge } from '../../../bench/grow/merge-models.ts';
import type { ModelBundle } from '../../../bench/events/index.ts';
import { modelIdFor } from '../../../bench/grow/new-model.ts';
import { leavingWith } from '../../../bench/grow/share-model.ts';
import { newFromBundle, takeFacts } from '../../../bench/grow/take-model.ts';
import { problemFor, problemOfPhoto } from '../../../bench/words.ts';
import type { CliParts } from '../cli-parts.ts';
import { writeOut } from '../pattern-file.ts';
import { counted } from '../print/counted.ts';
import { table } from '../print/table.ts';
import { MOST_BYTES, readInput } from '../read-input.ts';
import { withSession, type Session } from '../session.ts';
import { EXIT, misuse, Stop } from '../stop.ts';
import { modelGroup } from './model.ts';

interface GiveOptions {
  readonly author: string;
  readonly licence: string;
  readonly list?: boolean;
}
interface TakeOptions {
  readonly into?: string;
  readonly conflicts?: string;
}

/** Giving a model that grew here to others, and taking theirs. */
export function modelShareCommands(program: Command, parts: CliParts): void {
  const group = modelGroup(program);
  group
    .command('give')
    .argument('<model>', 'id of a model that grows here')
    .argument('[file]', 'name of the file')
    .description('writes a model with its photos into a file to give away; with --list only says what would leave')
    .option('--author <name>', 'how you want to be called in it', 'A bench')
    .option('--licence <words>', 'under which others may use it', '')
    .option('--list', 'says everything that would leave, and writes nothing')
    .addHelpText('after', '\nExample: salvor model give reed-r1 reed.zip --author "Marsh Lane" --licence "CC BY 4.0"')
    .action((model: string, file: string | undefined, options: GiveOptions, command: Command) =>
      withSession(command, parts, (session) => give(session, model, file, options)),
    );
  group
    .command('take')
    .argument('<file>', 'a file made by salvor model give')
    .description('takes a model in as a new one, or into one that grows here; where the two differ you say whose word counts')
    .option('--into <model>', 'a model that grows here')
    .option('--conflicts <whose>', 'ours or theirs: whose word counts where they differ')
    .addHelpText('after', '\nExample: salvor model take reed.zip --into reed-r1 --conflicts ours')
    .action((file: string, options: TakeOptions, command: Command) =>
      withSession(command, parts, (session) => take(session, file, options)),
    );
}

async function give(session: Session, id: string, file: string | undefined, { author, licence, list }: GiveOptions): Promise<void> {
  const { bench, photos, parts, show } = session;
  const bundle = bench.modelBundle(id, { author, licence });
  if (!bundle) throw misuse('no-such-model', { where: 'MODEL', detail: id });
  const leaves = leavingWith(bundle);
  if (list || file === undefined) return show({ leaves }, () => ['This would leave:', ...leaves.map((line) => `  ${line}`)]);
  await writeOut(parts, file, await parts.modelBundles.write(bundle, photos));
  show({ file, leaves }, () => [`${bundle.name} is in ${file}. With it left:`, ...leaves.map((line) => `  ${line}`)]);
}

async function take(session: Session, file: string, { into, conflicts }: TakeOptions): Promise<void> {
  const { parts, photos } = session;
  const read = await parts.modelBundles.read(await readInput(parts, file, MOST_BYTES.bundle));
  if (!read.ok) throw new Stop(EXIT.refused, problemFor('bad-bundle', { where: 'FILE', detail: read.detail }));
  for (const { name, bytes } of read.photos) {
    const kept = await photos.put(name, bytes);
    if (!kept.ok) throw new Stop(EXIT.refused, problemOfPhoto(kept));
  }
  if (into === undefined) takeAsNew(session, read.bundle);
  else takeInto(session, into, read.bundle, conflicts);
}

function takeAsNew({ bench, note, show }: Session, bundle: ModelBundle): void {
  const id = modelIdFor(bundle.name, (taken) => bench.model(taken) !== null);
  const noted = note(newFromBundle(id, bundle));
  show({ ...noted, model_id: id }, () => [
    `${bundle.name} by ${bundle.author} is here as ${id}, with ${counted(bundle.facts.length, 'fact')}.`,
  ]);
}

function takeInto({ bench, note, show }: Session, id: string, bundle: ModelBundle, whose: string | undefined): void {
  const ours = bench.modelBundle(id, { author: 'ours', licence: '' });
  if (!ours) throw misuse('no-such-model', { where: '--into', detail: id });
  const merge = mergeModels(ours.facts, bundle.facts, bundle.author);
  if (merge.conflicts.length > 0 && whose !== 'ours' && whose !== 'theirs') return show(merge, () => conflictLines(merge));
  const facts = factsToTake(merge, () => whose === 'theirs');
  const told = `${counted(merge.agreed, 'fact')} agreed, ${counted(facts.length, 'fact')} came in, ${counted(merge.conflicts.length, 'place')} differed.`;
  if (facts.length === 0) return show({ stored: [] }, () => [told]);
  show(note([takeFacts(id, bundle, facts)]), () => [told, 'salvor undo takes them back.']);
}

const conflictLines = ({ conflicts }: Merge): string[] => [
  ...table(
    ['place', 'ours', 'theirs'],
    conflicts.map(({ place, ours, theirs }) => [place, saidOf(ours), saidOf(theirs)]),
  ),
  'Nothing is taken in yet: add --conflicts ours or --conflicts theirs, or choose one by one on the page of the model.',
];
