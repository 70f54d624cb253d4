import type { Command } from 'commander';
import type { Bench } from '../../../bench/bench.ts';
import { isForeign, type Stored } from '../../../bench/events/index.ts';
import { logLine } from '../../../bench/log-line.ts';
import { wholeLog } from '../../../bench/whole-log.ts';
import { problemFor } from '../../../bench/words.ts';
import type { CliParts } from '../cli-parts.ts';
import { withSession, type Session } from '../session.ts';
import { EXIT, Stop } from '../stop.ts';

const LOOK_BACK = 200;

/** Taking back. */
export function undoCommand(program: Command, parts: CliParts): void {
  program
    .command('undo')
    .argument('[event]', 'id of the event; else the last one that this device noted and that stands')
    .description('takes an event back with a correction; nothing is erased')
    .option('--reason <text>', 'why', '')
    .addHelpText('after', '\nExample: salvor undo --reason "wrong unit"')
    .action((event: string | undefined, { reason }: { reason: string }, command: Command) =>
      withSession(command, parts, (session) => undo(session, event, reason)),
    );
}

function undo(session: Session, named: string | undefined, reason: string): void {
  const corrects = named ?? lastStanding(session.bench, session.device)?.event.id;
  if (corrects === undefined) throw new Stop(EXIT.refused, problemFor('nothing-to-undo'));
  const noted = session.note([{ kind: 'correction', body: { corrects, reason } }]);
  session.show(noted, () => [`Taken back: ${textOf(session.bench, corrects)}`, `To bring it back: salvor undo ${noted.stored[0]!.id}`]);
}

/** The last event of a device that has not been taken back and is no correction itself; looked for among the last 200 places of the log. */
function lastStanding(bench: Bench, device: string): Stored | undefined {
  const { seq, corrected } = bench.state();
  const recent = bench.log(Math.max(0, seq - LOOK_BACK), LOOK_BACK);
  return recent.findLast(
    ({ event }) => event.device === device && !isForeign(event) && event.kind !== 'correction' && !corrected.has(event.id),
  );
}

/** An event of the log in plain words. */
function textOf(bench: Bench, id: string): string {
  const models = new Map(bench.models().map((row) => [row.id, bench.model(row.id)!]));
  const stored = wholeLog(bench).findIndex((event) => event.id === id);
  return logLine(bench.log(stored, 1)[0]!, bench.state(), models).text;
}
