import type { Command } from 'commander';
import type { BoardProgress } from '../../../bench/boards/index.ts';
import type { Model } from '../../../bench/models/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { withSession, type Session } from '../session.ts';
import { misuse } from '../stop.ts';

/** Computing what circuits say, so that advice can go by readings at any pad. */
export function circuitCommand(program: Command, parts: CliParts): void {
  program
    .command('circuits')
    .argument('[model]', 'one model; all that have a circuit otherwise')
    .description('computes what the circuits of models say of readings, once for each; advice then goes by them')
    .addHelpText('after', '\nExample: salvor circuits tern-tn20')
    .action((id: string | undefined, _options: unknown, command: Command) =>
      withSession(command, parts, (session) => compute(session, id), { compute: true }),
    );
}

async function compute(session: Session, id: string | undefined): Promise<void> {
  const { bench, boards, parts, show } = session;
  const models = modelsNamed(session, id).filter(({ circuit }) => circuit !== undefined);
  const leave = boards?.watch(() => {
    const now = boards.progress().find(({ stage }) => stage === 'computing');
    if (now) parts.err(`${bench.model(now.modelId)!.file.name}: ${now.done} of ${now.rows} boards`);
  });
  const done: (BoardProgress | null)[] = [];
  for (const model of models) done.push((await boards?.settled(model)) ?? null);
  leave?.();
  const lines = models.map(
    ({ file }, i) => `${file.name}: ${done[i]?.stage === 'ready' ? `${done[i].rows} boards, ready` : 'not computed'}`,
  );
  show(
    { circuits: models.map(({ file }, i) => ({ model_id: file.id, stage: done[i]?.stage ?? 'stopped', rows: done[i]?.rows ?? 0 })) },
    () => (lines.length === 0 ? ['No such model has a circuit: it needs a netlist and a placement (level 2).'] : lines),
  );
}

function modelsNamed({ bench }: Session, id: string | undefined): Model[] {
  const ids = id === undefined ? bench.models().map((row) => row.id) : [id];
  return ids.map((each) => {
    const model = bench.model(each);
    if (!model) throw misuse('no-such-model', { where: 'MODEL', detail: each });
    return model;
  });
}
