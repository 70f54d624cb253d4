import type { Command } from 'commander';
import { atStrictness } from '../../../core/vision/difference/strictness.ts';
import { BoardSide } from '../../../bench/events/index.ts';
import { DIFFERENCE_WORDS } from '../../../bench/eyes/index.ts';
import type { Item } from '../../../bench/state.ts';
import type { BlindZone, ComparisonView, DifferenceView } from '../../../bench/views/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { percent, table } from '../print/table.ts';
import { withSession, type Session } from '../session.ts';
import { EXIT, misuse, Stop } from '../stop.ts';

interface DifferencesOptions {
  readonly photo?: string;
  readonly side?: string;
  readonly strictness: string;
}

/** What a photo of a board shows that good boards do not. */
export function differencesCommand(program: Command, parts: CliParts): void {
  program
    .command('differences')
    .argument('<item>', 'id or stock number')
    .description(
      'compares a photo of its board with those of good boards of its model; nothing is believed of it until you note it as a finding',
    )
    .option('--photo <hash>', 'beginning of the SHA-256 of the photo; else its newest photo of that side')
    .option('--side <side>', 'board-front or board-back', 'board-front')
    .option('--strictness <share>', '0 tells all, 1 only what is all but sure', '0.5')
    .addHelpText('after', '\nExample: salvor differences 7 --side board-front --strictness 0.3')
    .action((name: string, options: DifferencesOptions, command: Command) =>
      withSession(command, parts, (session) => differences(session, name, options)),
    );
}

async function differences(session: Session, name: string, options: DifferencesOptions): Promise<void> {
  const { eyes, parts, isJson, show } = session;
  const item = session.item(name);
  const side = BoardSide.safeParse(options.side);
  if (!side.success)
    throw misuse('bad-usage', { where: '--side', detail: `--side takes board-front or board-back, not "${options.side}"` });
  const strictness = Number(options.strictness);
  if (!(strictness >= 0 && strictness <= 1))
    throw misuse('bad-usage', { where: '--strictness', detail: '--strictness takes a number from 0 to 1' });
  const started = await eyes.start({ item_id: item.id, photo: photoOf(item, side.data, options.photo), side: side.data });
  if (!started.ok) throw misuse(started.code, { where: 'ITEM', detail: started.detail });
  if (started.view.stage !== 'ready' && !isJson) parts.err('Comparing …');
  const view = (await eyes.settled(started.view.key))!;
  if (!view.result) throw new Stop(EXIT.refused, view.problem!);
  show(view, () => lines(view.result!, strictness));
}

function photoOf(item: Item, side: BoardSide, wanted: string | undefined): string {
  const fits = item.photos.filter(({ hash, side: its }) => (wanted === undefined ? its === side : hash.startsWith(wanted)));
  const found = fits.at(-1);
  if (found) return found.hash;
  throw misuse('no-such-photo', { where: '--photo', detail: wanted ?? side });
}

function lines(
  { differences: all, zones, advice, references, variations }: NonNullable<ComparisonView['result']>,
  strictness: number,
): string[] {
  const shown = atStrictness(all, strictness);
  const against = `${references} photo(s) of good boards and ${variations} known variation(s)`;
  const head =
    shown.length === 0
      ? [`Nothing that is likely enough differs from ${against}. That is no proof: look yourself, too.`]
      : table(['no', 'chance', 'at', 'what', 'mm'], shown.map(row), [0, 1]);
  const hidden = all.length - shown.length;
  return [
    ...head,
    ...(hidden > 0 ? [`${hidden} less likely one(s) are left out; --strictness 0 tells all.`] : []),
    ...zones.map(blindLine),
    ...advice.map((each) => `For a better photo: ${each}.`),
  ];
}

function row({ rank, chance, part, shows, outline_mm: mm }: DifferenceView): string[] {
  const middle = (axis: 0 | 1): string => (mm!.reduce((sum, spot) => sum + spot[axis], 0) / mm!.length).toFixed(1);
  return [`${rank}`, percent(chance), part ?? '', DIFFERENCE_WORDS[shows], mm ? `${middle(0)}, ${middle(1)}` : ''];
}

const REASONS = {
  'not-seen': 'not on the photo',
  glare: 'blinded by a highlight',
  'does-not-fit': 'does not lie on the reference',
} as const;

const blindLine = ({ reason, parts, squares }: BlindZone): string =>
  `Look here yourself, ${REASONS[reason]}: ${parts.length > 0 ? parts.join(', ') : `${squares.length} place(s) without a known part`}.`;
