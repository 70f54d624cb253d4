import { parseMajor } from '../../dist/core/quantity/money.js';
import { parseReading } from '../../dist/bench/parse-reading.js';

/**
 * How each line of the story becomes an event. The first key of a line is its verb; `on` names the item. Money is
 * written in pounds, readings as a meter shows them, claims as `function=behaviour`, `place:finding` or `untested`.
 */
export const VERBS = {
  weigh: (line, { currency }) => [
    'listing-weighed',
    {
      listing_id: line.weigh,
      title: line.title,
      text: line.text,
      seller: line.seller,
      model_id: line.model,
      count: line.count,
      price_minor: money(line.price),
      postage_minor: money(line.postage),
      currency,
      claims: line.claims?.map(claimOf),
    },
  ],
  drop: (line) => ['listing-dropped', { listing_id: line.drop, reason: line.because }],
  buy: (line, { currency }) => [
    'lot-bought',
    {
      lot_id: line.buy,
      listing_id: line.listing,
      title: line.title,
      seller: line.seller,
      price_minor: money(line.price),
      postage_minor: money(line.postage),
      currency,
      items: Object.entries(line.items).map(([id, item]) => ({
        item_id: id,
        name: item.name,
        model_id: item.model,
        kind: item.slot ? 'assembly' : 'unit',
        slot: item.slot,
        expected_value_minor: money(item.worth),
      })),
    },
  ],
  receive: (line) => ['item-received', { item_id: line.receive, condition: line.condition }],
  hear: (line) => ['claim-made', { item_id: line.on, claim: claimOf(line.hear), text: line.text }],
  try: (line) => ['trial-done', { item_id: line.on, function: line.try, outcome: line.outcome, with: line.with, minutes: line.minutes }],
  photo: (line, { photos }) => [
    'photo-taken',
    { item_id: line.on, photo: hashOf(photos, line.photo), side: line.side, caption: line.caption },
  ],
  look: (line) => ['finding-noted', { item_id: line.on, place: line.look, sees: line.sees, text: line.text, minutes: line.minutes }],
  measure: (line, { modeOf }) => ['reading-taken', readingOf(line, modeOf(line.on, line.measure))],
  open: (line) => ['opened-to', { item_id: line.on, stage: line.open, minutes: line.minutes }],
  remedy: (line) => [
    'remedy-done',
    { item_id: line.on, remedy: line.remedy, place: line.place, minutes: line.minutes, outcome: line.outcome, text: line.text },
  ],
  move: (line) => [
    'transplant-done',
    {
      assembly_id: line.move,
      name: line.name,
      slot: line.slot,
      from_item: line.from ?? null,
      to_item: line.to ?? null,
      minutes: line.minutes,
    },
  ],
  bag: (line, { currency }) => [
    'part-bought',
    { bag_id: line.bag, part: line.part, name: line.name, count: line.count, price_minor: money(line.price), currency, place: line.place },
  ],
  use: (line) => ['part-used', { bag_id: line.use, item_id: line.on, count: line.count ?? 1 }],
  order: (line, { currency }) => [
    'order-placed',
    {
      order_id: line.order,
      supplier: line.supplier,
      lines: line.lines.map((each) => ({ ...each, price: undefined, price_minor: money(each.price) })),
      postage_minor: money(line.postage),
      currency,
    },
  ],
  arrived: (line) => ['order-arrived', { order_id: line.arrived, place: line.place }],
  prove: (line) => [
    'proof-step-done',
    { item_id: line.on, step: line.prove, outcome: line.outcome, reason: line.reason, minutes: line.minutes },
  ],
  grade: (line) => ['graded', { item_id: line.on, scale: 'salvor-1', grade: line.grade, text: line.text }],
  list: (line) => ['listed', { item_id: line.list, price_minor: money(line.price), place: line.place }],
  sell: (line, { currency }) => [
    'sold',
    {
      item_id: line.sell,
      as: line.as ?? 'working',
      price_minor: money(line.price),
      postage_charged_minor: money(line.postage_charged),
      fees_minor: money(line.fees),
      postage_minor: money(line.postage),
      currency,
      buyer: line.buyer,
    },
  ],
  return: (line) => [
    'returned',
    {
      item_id: line.return,
      refund_minor: money(line.refund),
      fees_back_minor: money(line.fees_back),
      postage_minor: money(line.postage),
      reason: line.because,
    },
  ],
  scrap: (line) => ['scrapped', { item_id: line.scrap, reason: line.because }],
  keep: (line) => ['kept', { item_id: line.keep, reason: line.because }],
  note: (line) => ['note-written', { item_id: line.on, text: line.note }],
  clock: (line) => ['time-clocked', { item_id: line.on, task: line.clock, minutes: line.minutes }],
  decline: (line) => ['advice-declined', { item_id: line.on, advice: line.decline, reason: line.because }],
  undo: (line, { labels }) => ['correction', { corrects: labels.get(line.undo), reason: line.because }],
};

/** Pounds in the story, pennies in the event; what is not there stays away. */
function money(pounds) {
  if (pounds === undefined) return undefined;
  const minor = parseMajor(String(pounds), 'GBP');
  if (minor === undefined) throw new Error(`"${pounds}" is not an amount of pounds`);
  return minor;
}

function claimOf(text) {
  if (text === 'untested') return { about: 'untested' };
  const [, name, sign, says] = /^([\w.-]+)([=:])([\w-]+)$/.exec(text) ?? [];
  if (!name) throw new Error(`"${text}" is not a claim: write power=fails, shell:cracked or untested`);
  return sign === '=' ? { about: 'function', function: name, says } : { about: 'place', place: name, sees: says };
}

function readingOf(line, mode) {
  const reading = parseReading(String(line.reads));
  if (!reading.ok) throw new Error(reading.message);
  if (reading.mode && reading.mode !== mode) throw new Error(`"${line.reads}" is not a reading in ${mode}`);
  return { item_id: line.on, point: line.measure, mode, value: reading.value, minutes: line.minutes };
}

function hashOf(photos, name) {
  const hash = photos.get(name);
  if (!hash) throw new Error(`there is no photo "${name}": add it to demo/photos.yaml and run scripts/draw-demo-photos.mjs`);
  return hash;
}
