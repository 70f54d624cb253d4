import type { Command } from 'commander';
import type { Claim } from '../../../bench/events/index.ts';
import { ScoutQuestion, type LotView, type OutlookView } from '../../../bench/views/index.ts';
import { claimsThatCount, readListing, type ListingReading } from '../../../bench/scout/index.ts';
import { claimIn, claimText } from '../claims.ts';
import type { CliParts } from '../cli-parts.ts';
import { moneyIn, moneyText } from '../money.ts';
import { lotLines, questionLines } from '../print/lot-lines.ts';
import { setName } from '../print/item-lines.ts';
import { percent } from '../print/table.ts';
import { withSession, type Session } from '../session.ts';
import { sound } from '../sound.ts';
import { misuse } from '../stop.ts';

interface ScoutOptions {
  readonly price: string;
  readonly postage: string;
  readonly tax: string;
  readonly seller: string;
  readonly count: string;
  readonly currency?: string;
  readonly rate: string;
  readonly says: string[];
  readonly text: string;
  readonly pile?: boolean;
  readonly ask?: boolean;
}

/** Should I buy it. */
export function scoutCommand(program: Command, parts: CliParts): void {
  program
    .command('scout')
    .argument('<model>', 'what it is; any-pocket-player fits what nobody has modelled')
    .description('weighs a listing: what it is worth to this bench, and the most to pay; stores nothing')
    .requiredOption('--price <amount>', 'what is asked')
    .option('--postage <amount>', 'postage to you', '0')
    .option('--tax <amount>', 'import tax and duty', '0')
    .option('--seller <name>', 'their record here counts', '')
    .option('--count <count>', 'how many of them are in the lot', '1')
    .option('--currency <code>', 'when it is not that of the bench')
    .option('--rate <number>', 'bench currency for one unit of it', '1')
    .option('--says <claim...>', 'what the seller says: sound=fails, shell:cracked, untested', [])
    .option('--text <words>', 'the words of the listing, read into claims; --says goes before them', '')
    .option('--pile', 'what it is worth to the pile as it is planned, and the most to pay for the profit and risk that you set')
    .option('--ask', 'what to ask the seller, most worth first')
    .addHelpText('after', '\nExample: salvor scout tern-tn10 --price 14 --postage 3.50 --seller "Harbour Clearance" --says starts=fails')
    .action((model: string, options: ScoutOptions, command: Command) =>
      withSession(command, parts, (session) => scout(session, model, options)),
    );
}

async function scout(session: Session, model: string, options: ScoutOptions): Promise<void> {
  const reading = readText(session, model, options.text);
  const currency = options.currency ?? session.bench.overview().currency;
  const question = ScoutQuestion.safeParse({
    model_id: model,
    seller: options.seller,
    count: Number(options.count),
    price_minor: moneyIn(options.price, currency, '--price'),
    postage_minor: moneyIn(options.postage, currency, '--postage'),
    tax_minor: moneyIn(options.tax, currency, '--tax'),
    currency,
    rate: Number(options.rate),
    claims: claimsOf(options.says.map(claimIn), reading),
  });
  if (!question.success)
    throw misuse('bad-input', { where: question.error.issues[0]!.path.join('.'), detail: question.error.issues[0]!.message });
  const outlook = sound(session.bench.outlook(question.data));
  const lot = options.pile ? await lotOf(session, question.data) : undefined;
  const questions = options.ask ? sound(session.bench.sellerQuestions(question.data)) : undefined;
  const answer = { ...outlook, ...(lot ? { lot } : {}), ...(questions ? { questions } : {}) };
  session.show(answer, () => [
    ...readingLines(reading),
    ...outlookLines(outlook),
    ...(lot ? ['', ...lotLines(lot)] : []),
    ...(questions ? ['', ...questionLines(questions)] : []),
  ]);
}

async function lotOf({ bench }: Session, { model_id, count, claims, ...asked }: ScoutQuestion): Promise<LotView> {
  const lot = await bench.lot({ ...asked, units: [{ model_id, count, claims }] });
  if (lot === null) throw misuse('no-plans');
  return sound(lot);
}

function readText(session: Session, model: string, text: string): ListingReading | undefined {
  const file = session.bench.model(model)?.file;
  return text === '' || !file ? undefined : readListing(text, file, [...session.bench.state().taughtWords.values()]);
}

/** What was typed, and of what was read only that of which nothing was typed. */
function claimsOf(typed: readonly Claim[], reading: ListingReading | undefined): Claim[] {
  const about = (claim: Claim): string =>
    claim.about === 'function' ? claim.function : claim.about === 'place' ? claim.place : claim.about;
  const known = new Set(typed.map(about));
  return [...typed, ...(reading ? claimsThatCount(reading, null).filter((claim) => !known.has(about(claim))) : [])];
}

const readingLines = (reading: ListingReading | undefined): string[] =>
  (reading?.claims ?? []).map(
    ({ claim, words, rule, counts, unit }) =>
      `Read ${claimText(claim)}${unit === null ? '' : ` of unit ${unit}`} in "${words}" (${rule})${counts ? '' : '; it does not count'}`,
  );

function outlookLines(outlook: OutlookView): string[] {
  const money = (minor: number): string => moneyText(minor, outlook.currency);
  return [
    `${outlook.verdict.toUpperCase()}: worth at most ${money(outlook.ceiling_minor)}, asked ${money(outlook.asks_minor)}; ${percent(outlook.loss_chance)} chance of a loss`,
    `  ${money(outlook.value_minor)} expected (${money(outlook.low_minor)} to ${money(outlook.high_minor)}), ${Math.round(outlook.minutes)} min; ${percent(outlook.mendable)} ends working`,
    ...outlook.why.map((why) => `  ${why}`),
    ...outlook.hypotheses.slice(0, 5).map((each) => `  ${percent(each.chance).padStart(5)}  ${setName(each)}`),
  ];
}
