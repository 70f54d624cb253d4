import type { Command } from 'commander';
import { BoardSide } from '../../../bench/events/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { withSession, type Session } from '../session.ts';
import { misuse } from '../stop.ts';

interface ReferenceOptions {
  readonly side: string;
  readonly drop?: boolean;
}

/** Photos of known-good boards. */
export function referenceCommand(program: Command, parts: CliParts): void {
  program
    .command('reference')
    .argument('<model>', 'name of the model')
    .argument('[photo]', 'beginning of the SHA-256 of a photo of one of its units, or "shipped" for that of the model')
    .description('chooses a photo of a good board that others are compared with; without a photo tells those that are chosen')
    .option('--side <side>', 'board-front or board-back', 'board-front')
    .option('--drop', 'it is not compared with any more')
    .addHelpText('after', '\nExample: salvor reference tern-tn20 shipped --drop')
    .action((model: string, photo: string | undefined, options: ReferenceOptions, command: Command) =>
      withSession(command, parts, (session) => reference(session, model, photo, options)),
    );
}

function reference(session: Session, modelId: string, photo: string | undefined, options: ReferenceOptions): void {
  const side = BoardSide.safeParse(options.side);
  if (!side.success)
    throw misuse('bad-usage', { where: '--side', detail: `--side takes board-front or board-back, not "${options.side}"` });
  if (!session.bench.model(modelId)) throw misuse('no-such-model', { where: 'MODEL', detail: modelId });
  const use = !options.drop;
  if (photo !== undefined)
    session.note([{ kind: 'reference-set', body: { model_id: modelId, side: side.data, photo: hashOf(session, modelId, photo), use } }]);
  const view = session.eyes.references(modelId)!;
  session.show(view, () =>
    view.sides.flatMap(({ side: of, references }) => [
      `${of}: ${references.length === 0 ? 'none' : references.map((each) => each.photo.slice(0, 12)).join(', ')}`,
    ]),
  );
}

function hashOf({ bench }: Session, modelId: string, photo: string): string {
  if (photo === 'shipped') return photo;
  const photos = [...bench.state().items.values()].flatMap((item) => (item.modelId === modelId ? item.photos : []));
  const found = photos.find(({ hash }) => hash.startsWith(photo));
  if (!found) throw misuse('no-such-photo', { where: 'PHOTO', detail: photo });
  return found.hash;
}
