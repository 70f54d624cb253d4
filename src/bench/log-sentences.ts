import { regionSize, type EventOf, type Kind, type Region } from './events/index.ts';
import { GROW_SENTENCES } from './grow/sentences.ts';
import { spaced, type LogWords } from './log-words.ts';
import { PICTURE_SENTENCES } from './eyes/log-sentences.ts';
import { choiceSaid, wishesSaid } from './plan/said.ts';
import { TEST_NAMES } from './report/test-names.ts';

type Sentence<K extends Kind> = (words: LogWords, body: EventOf<K>['body']) => string;

const took = (minutes: number): string => (minutes > 0 ? `, ${minutes} min` : '');
const remark = (text: string): string => (text === '' ? '' : `: ${text}`);
function around(region: Region | undefined): string {
  if (!region) return '';
  const { w, h } = regionSize(region);
  return ` on ${w} × ${h} mm of the ${region.side}`;
}
const REMEDY = {
  mended: 'it is mended',
  'not-mended': 'it is not mended',
  'made-worse': 'it is worse than before',
  'not-tried-yet': 'not tried yet',
};
const UNITS = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' };
const STAGES = { closed: 'Closed', open: 'Opened the shell of', 'board-out': 'Took the board out of' };
const STEP = { pass: 'passed', fail: 'failed', 'signed-off': 'not passed, signed off' };

/** One plain sentence for every kind of event. */
export const SENTENCES: { readonly [K in Kind]: Sentence<K> } = {
  'bench-set': (words, body) => {
    const parts = [
      body.name === undefined ? '' : `name "${body.name}"`,
      body.currency === undefined ? '' : `currency ${body.currency}`,
      body.hour_value_minor === undefined ? '' : `an hour is worth ${words.money(body.hour_value_minor)}`,
      body.fee_percent === undefined ? '' : `selling fee ${body.fee_percent} %`,
      body.postage_out_minor === undefined ? '' : `postage out ${words.money(body.postage_out_minor)}`,
    ];
    return `Bench set: ${parts.filter((part) => part !== '').join(', ') || 'nothing changed'}.`;
  },
  'listing-weighed': (words, body) =>
    `Weighed "${body.title}" by ${body.seller}: ${body.count} for ${words.money(body.price_minor + body.postage_minor, body.currency)} with postage.`,
  'listing-dropped': (words, body) => `Left "${words.listing(body.listing_id)}" alone: ${body.reason}.`,
  'lot-bought': (words, body) => {
    const cost = words.money(body.price_minor + body.postage_minor + body.tax_minor, body.currency);
    const names = body.items.map((item) => words.item(item.item_id)).join(', ');
    return `Bought "${body.title}" from ${body.seller} for ${cost} with postage and tax: ${names}.`;
  },
  'item-received': (words, body) => `Received ${words.item(body.item_id)}${remark(body.condition)}.`,
  'claim-made': (words, body) =>
    `The seller says of ${words.item(body.item_id)}: ${words.claim(body.item_id, body.claim)}${remark(body.text)}.`,
  'trial-done': (words, body) => {
    const helped = body.with.map((id) => words.named(body.item_id, 'accessories', id)).join(', ');
    const trial = `${words.named(body.item_id, 'functions', body.function)} of ${words.item(body.item_id)}`;
    return `Tried ${trial}${helped === '' ? '' : ` with ${helped}`}: ${spaced(body.outcome)}${took(body.minutes)}.`;
  },
  'photo-taken': (words, body) => `Photo of ${words.item(body.item_id)}, ${spaced(body.side)}${remark(body.caption)}.`,
  'finding-noted': (words, body) =>
    `Looked at ${words.place(body.item_id, body.place)} of ${words.item(body.item_id)}: ${spaced(body.sees)}${around(body.region)}${remark(body.text)}${took(body.minutes)}.`,
  'reading-taken': (words, body) => {
    const value = body.value === null ? 'OL' : `${body.value} ${UNITS[body.mode]}`;
    const point = words.named(body.item_id, 'points', body.point);
    return `Measured ${point} of ${words.item(body.item_id)} in ${body.mode}: ${value}${took(body.minutes)}.`;
  },
  'step-done': (words, body) =>
    `${words.named(body.item_id, 'steps', body.step)} ${body.way === 'in' ? 'on' : 'put back on'} ${words.item(body.item_id)}${took(body.minutes)}.`,
  'fasteners-counted': (words, body) => {
    const foreign = body.foreign > 0 ? `, ${body.foreign} of another kind` : '';
    const set = words.named(body.item_id, 'fasteners', body.fasteners);
    return `${body.way === 'out' ? 'Came out of' : 'Went into'} ${words.item(body.item_id)}: ${body.count} of ${set}${foreign}.`;
  },
  'opened-to': (words, body) => `${STAGES[body.stage]} ${words.item(body.item_id)}${took(body.minutes)}.`,
  'remedy-done': (words, body) => {
    const place = body.place === undefined ? '' : ` at ${words.place(body.item_id, body.place)}`;
    const remedy = words.named(body.item_id, 'remedies', body.remedy);
    return `${remedy}${place} on ${words.item(body.item_id)}: ${REMEDY[body.outcome]}${remark(body.text)}${took(body.minutes)}.`;
  },
  'transplant-done': (words, body) => {
    const from = body.from_item === null ? 'the drawer' : words.item(body.from_item);
    const to = body.to_item === null ? 'the drawer' : words.item(body.to_item);
    return `Moved ${words.item(body.assembly_id)} from ${from} to ${to}${took(body.minutes)}.`;
  },
  'part-bought': (words, body) => `Bought ${body.count} × ${body.name} for ${words.money(body.price_minor, body.currency)}.`,
  'bag-set': (words, body) => {
    const parts = [
      body.place === undefined ? '' : `lies in ${body.place === '' ? 'no place' : body.place}`,
      body.pattern === undefined ? '' : body.pattern === null ? 'terminals taken away' : `terminals as in ${body.pattern.name}`,
    ];
    return `Bag of ${words.bag(body.bag_id)}: ${parts.filter((part) => part !== '').join(', ') || 'nothing changed'}.`;
  },
  'part-used': (words, body) => `Used ${body.count} × ${words.bag(body.bag_id)} on ${words.item(body.item_id)}.`,
  'order-placed': (words, body) => {
    const cost = body.lines.reduce((sum, line) => sum + line.price_minor, body.postage_minor);
    const lines = body.lines.map((line) => `${line.count} × ${line.name}`).join(', ');
    return `Ordered from ${body.supplier} for ${words.money(cost, body.currency)} with postage: ${lines}.`;
  },
  'order-arrived': (_words, body) => {
    const part = body.counts ? `: ${body.counts.join(', ')} of its lines` : '';
    return `Order ${body.order_id} arrived${part}${body.place === '' ? '' : `, put into ${body.place}`}.`;
  },
  'order-cancelled': (words, body) =>
    `What had not come of order ${body.order_id} will not come; paid back ${words.money(body.refund_minor)}${remark(body.reason)}.`,
  'proof-step-done': (words, body) =>
    `Proof of ${words.item(body.item_id)}, ${words.step(body.item_id, body.step)}: ${STEP[body.outcome]}${remark(body.reason)}${took(body.minutes)}.`,
  'test-done': (words, body) => {
    const good = body.known_good ? ', as one that is known to be well' : '';
    return `${TEST_NAMES[body.test]} of ${words.item(body.item_id)}${good}: ${spaced(body.verdict)}${remark(body.text)}${took(body.minutes)}.`;
  },
  graded: (words, body) => `Graded ${words.item(body.item_id)} ${body.grade} on the scale ${body.scale}${remark(body.text)}.`,
  listed: (words, body) => `Listed ${words.item(body.item_id)} for ${words.money(body.price_minor)} at ${body.place}.`,
  sold: (words, body) => {
    const charged = words.money(body.price_minor + body.postage_charged_minor, body.currency);
    const spent = words.money(body.fees_minor + body.postage_minor, body.currency);
    const buyer = body.buyer === '' ? '' : ` to ${body.buyer}`;
    return `Sold ${words.item(body.item_id)} ${body.as === 'working' ? 'as working' : 'for parts'}${buyer} for ${charged}; fees and postage ${spent}.`;
  },
  returned: (words, body) => `${words.item(body.item_id)} came back; refunded ${words.money(body.refund_minor)}${remark(body.reason)}.`,
  scrapped: (words, body) => `Scrapped ${words.item(body.item_id)}: ${body.reason}.`,
  kept: (words, body) => `Kept ${words.item(body.item_id)}${remark(body.reason)}.`,
  'sale-seen': (words, body) =>
    `Saw one sold on ${body.day} for ${words.money(body.price_minor, body.currency)}, condition ${body.condition}${remark(body.text)}.`,
  'fees-set': (words, body) => {
    const bands = body.bands.map(({ up_to_minor: end, percent }) => `${percent} %${end === null ? '' : ` up to ${words.money(end)}`}`);
    return `Fees at ${body.place} from ${body.from_day}: ${bands.join(', ')} and ${words.money(body.fixed_minor)}.`;
  },
  'postage-set': (words, body) =>
    `Postage from ${body.from_day}: ${body.bands.map(({ up_to_g: end, price_minor }) => `up to ${end} g ${words.money(price_minor)}`).join(', ')}.`,
  'tax-rule-set': (_words, body) => `Rule "${spaced(body.rule)}" ${body.on ? 'used' : 'not used any more'} from ${body.from_day}.`,
  'sale-text-set': () => 'Set the words of a listing.',
  'learning-set': (_words, body) =>
    body.half_life_days === null ? 'Jobs do not fade for what is learned.' : `A job counts half after ${body.half_life_days} days.`,
  'learned-reset': (_words, body) => `Began to learn anew: ${body.about}${remark(body.reason)}.`,
  'plan-set': (words, body) => `Wishes for the plan set: ${wishesSaid(words, body).join(', ') || 'nothing changed'}.`,
  'plan-chosen': (words, body) => {
    const cost = body.regret_minor === undefined ? '' : `, said to cost ${words.money(body.regret_minor)}`;
    return `Decided for ${words.item(body.item_id)}: ${choiceSaid(words, body)}${cost}${remark(body.reason)}.`;
  },
  'supplier-set': (words, body) =>
    body.offers.length === 0
      ? `Supplier ${body.supplier} is forgotten.`
      : `Supplier ${body.supplier}: ${body.offers.length} part(s), postage ${words.money(body.postage_minor, body.currency)}, ${body.days} days.`,
  'learned-taken-in': (_words, body) =>
    `Took in ${body.numbers.length} numbers that "${body.from}" has learned of ${body.model_id}; a job of theirs counts as ${body.weight}.`,
  'words-taught': (_words, body) =>
    body.claim === null ? `"${body.words}" means nothing any more in listings.` : `Taught what "${body.words}" means in listings.`,
  ...GROW_SENTENCES,
  ...PICTURE_SENTENCES,
  'note-written': (words, body) => `Note${body.item_id === undefined ? '' : ` on ${words.item(body.item_id)}`}: ${body.text}`,
  'time-clocked': (words, body) =>
    `${body.minutes} min of ${body.task}${body.item_id === undefined ? '' : ` on ${words.item(body.item_id)}`}.`,
  'advice-declined': (words, body) => `Did not follow "${spaced(body.advice)}" for ${words.item(body.item_id)}${remark(body.reason)}.`,
  correction: (_words, body) => `Took an earlier entry back${remark(body.reason)}.`,
  'demo-put-away': () => 'Put the demo away.',
};
