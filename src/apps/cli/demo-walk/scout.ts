import type { Claim } from '../../../bench/events/index.ts';
import type { Model } from '../../../bench/models/index.ts';
import type { OutlookView } from '../../../bench/views/index.ts';
import { decide, factor, note, percentText, pounds, type Workplace } from './workplace.ts';

/** Invented sellers, and how often each tells what is so. */
const SELLERS = [
  { name: 'Harbour Lane Clearance', honesty: 0.9 },
  { name: 'Attic and Loft', honesty: 0.7 },
  { name: 'Quick Lots', honesty: 0.45 },
] as const;

const WANTED_UNITS = 4;
const MOST_LISTINGS = 30;
/** Asked prices spread about what faulty ones usually cost (an assumption of the walk). */
const ASK_SPREAD = 0.4;
/** Share of sellers who ask nearly the price of a working one (an assumption of the walk). */
const HOPEFUL = 0.35;

interface Offer {
  readonly id: string;
  readonly title: string;
  readonly seller: (typeof SELLERS)[number];
  readonly model: Model;
  readonly unitIds: readonly string[];
  readonly claims: readonly Claim[];
  readonly priceMinor: number;
  readonly postageMinor: number;
}

/** Looks through listings until enough units are bought and at least one listing was left for its price; gives the ids of the units. */
export function scout(place: Workplace): string[] {
  const bought: string[] = [];
  let left = 0;
  for (let i = 1; i <= MOST_LISTINGS && (bought.length < WANTED_UNITS || left === 0); i++) {
    const offer = drawOffer(place, i);
    const outlook = weigh(place, offer);
    const paid = priceToPay(place, offer, outlook);
    if (paid === null) {
      left += 1;
      note(place, 'listing-dropped', { listing_id: offer.id, reason: outlook.why[0] ?? outlook.verdict });
      continue;
    }
    buy(place, offer, paid);
    bought.push(...offer.unitIds);
  }
  return bought;
}

function drawOffer(place: Workplace, index: number): Offer {
  const { random, truth, models } = place;
  const known = [...models.values()].filter((model) => model.file.level > 0);
  const model = known[Math.floor(random() * known.length)]!;
  const seller = SELLERS[Math.floor(random() * SELLERS.length)]!;
  const count = 1 + Math.floor(random() * 2);
  const unitIds = Array.from({ length: count }, (_, i) => `walk-${index}-${i + 1}`);
  for (const id of unitIds) truth.addUnit(id, model);
  const { for_parts, working } = model.file.prices;
  const usual = random() < HOPEFUL ? 0.75 * working : for_parts;
  const priceMinor = Math.round((usual * count * factor(ASK_SPREAD, random)) / 50) * 50;
  const title = `${count} × ${model.file.name}, faulty`;
  return {
    id: `offer-${index}`,
    title,
    seller,
    model,
    unitIds,
    claims: drawClaims(place, unitIds, model, seller.honesty),
    priceMinor,
    postageMinor: 420,
  };
}

/** What the seller says of two functions: true of the first unit as often as the seller is honest, and said of all. */
function drawClaims({ random, truth }: Workplace, unitIds: readonly string[], model: Model, honesty: number): Claim[] {
  const functions = [...model.file.functions].sort(() => random() - 0.5).slice(0, 2);
  return functions.map(({ id }) => {
    const so = truth.tryFunction(unitIds[0]!, id, []);
    const says = random() < honesty ? so : so === 'works' ? 'fails' : 'works';
    return { about: 'function', function: id, says };
  });
}

function weigh(place: Workplace, offer: Offer): OutlookView {
  const { bench, say } = place;
  const { currency } = bench.state().settings;
  const shared = { model_id: offer.model.file.id, count: offer.unitIds.length, price_minor: offer.priceMinor, claims: [...offer.claims] };
  const terms = { seller: offer.seller.name, postage_minor: offer.postageMinor, currency };
  note(place, 'listing-weighed', { listing_id: offer.id, title: offer.title, ...shared, ...terms });
  const outlook = bench.outlook({ ...shared, ...terms, tax_minor: 0, rate: 1 });
  if ('ok' in outlook) throw new Error(`The bench would not weigh ${offer.id}: ${outlook.message}.`);
  say('');
  say(
    `Listing: ${offer.title}, ${pounds(place, offer.priceMinor)} and ${pounds(place, offer.postageMinor)} postage, from ${offer.seller.name}`,
  );
  say(`  Seller says: ${offer.claims.map(claimText).join('; ')}`);
  say(
    `  Outlook: ${percentText(outlook.mendable)} of them end as working ones; worth at most ${pounds(place, outlook.ceiling_minor)}, ` +
      `asked ${pounds(place, outlook.asks_minor)}; ${percentText(outlook.loss_chance)} that it loses money`,
  );
  return outlook;
}

const claimText = (claim: Claim): string =>
  claim.about === 'function' ? `${claim.function} ${claim.says.replaceAll('-', ' ')}` : claim.about;

/** Follows the verdict. Haggling: the bench's ceiling is offered, and a seller takes what is not far below the asked price. */
function priceToPay(place: Workplace, offer: Offer, outlook: OutlookView): number | null {
  if (outlook.verdict === 'buy') {
    decide(place, `buy it for ${pounds(place, offer.priceMinor)}`, outlook.why);
    return offer.priceMinor;
  }
  const bid = outlook.ceiling_minor - offer.postageMinor;
  const least = offer.priceMinor * (0.6 + 0.35 * place.random());
  if (outlook.verdict === 'haggle' && bid >= least) {
    decide(place, `offer ${pounds(place, bid)}, which ${offer.seller.name} takes`, outlook.why);
    return bid;
  }
  const what =
    outlook.verdict === 'haggle' ? `leave it, as ${offer.seller.name} would not take ${pounds(place, Math.max(0, bid))}` : 'leave it';
  decide(place, what, outlook.why);
  return null;
}

function buy(place: Workplace, offer: Offer, priceMinor: number): void {
  const { currency } = place.bench.state().settings;
  note(place, 'lot-bought', {
    lot_id: `lot-of-${offer.id}`,
    listing_id: offer.id,
    title: offer.title,
    seller: offer.seller.name,
    price_minor: priceMinor,
    postage_minor: offer.postageMinor,
    currency,
    items: offer.unitIds.map((id, i) => ({
      item_id: id,
      name: `${offer.model.file.name} ${'abc'.charAt(i)}`,
      model_id: offer.model.file.id,
      kind: 'unit',
      expected_value_minor: offer.model.file.prices.for_parts,
    })),
  });
  place.clock.pass(3 * 24 * 60);
}
