import type { Pile, PileItem, PileModel } from '../../src/core/planning/index.ts';

/** One plan of a small pile: which units are opened, the remedy of each assembly (-1 for none), and how many parts go into each place. */
interface Try {
  readonly opened: ReadonlySet<string>;
  readonly remedyOf: ReadonlyMap<string, number>;
  readonly fills: readonly number[];
}

interface Piece {
  readonly model: string;
  readonly slot: string;
  readonly item: string | null;
  readonly chance: number;
}

const MOST_FILLS = 4;

/**
 * The most expected profit over all plans of a pile, each judged by going through every outcome of every assembly one by one. Written apart
 * from the engine and as plainly as possible; for piles with a handful of doubtful assemblies.
 */
export function bruteForce(pile: Pile): number {
  let best = -Infinity;
  for (const attempt of allPlans(pile)) best = Math.max(best, worthOf(pile, attempt));
  return best;
}

function* allPlans(pile: Pile): Generator<Try> {
  const units = pile.items.filter((item) => item.whole && !item.keep);
  const places = pile.parts.flatMap((part) => part.fills);
  for (let bits = 0; bits < 2 ** units.length; bits++) {
    const opened = new Set(units.filter((_, i) => bits & (1 << i)).map(({ id }) => id));
    const free = pile.items.filter((item) => !item.keep && (!item.whole || opened.has(item.id)));
    const choices = free.flatMap((item) =>
      item.assemblies.filter(({ remedies }) => remedies.length > 0).map((assembly) => ({ item, assembly })),
    );
    for (const picks of combinations(choices.map(({ assembly }) => assembly.remedies.length + 1)))
      for (const fills of combinations(places.map(() => MOST_FILLS + 1)))
        yield { opened, fills, remedyOf: new Map(choices.map(({ item, assembly }, i) => [`${item.id} ${assembly.slot}`, picks[i]! - 1])) };
  }
}

function* combinations(sizes: readonly number[]): Generator<number[]> {
  const total = sizes.reduce((a, b) => a * b, 1);
  for (let n = 0; n < total; n++) {
    let rest = n;
    yield sizes.map((size) => {
      const digit = rest % size;
      rest = Math.floor(rest / size);
      return digit;
    });
  }
}

function worthOf(pile: Pile, { opened, remedyOf, fills }: Try): number {
  const used = new Map<string, number>();
  const pieces: Piece[] = [];
  let [money, minutes, fixed] = [0, 0, 0];
  for (const item of pile.items) {
    if (item.keep) continue;
    if (item.whole && !opened.has(item.id)) {
      fixed += item.whole.asIsMinor;
      continue;
    }
    minutes += item.whole?.openMinutes ?? 0;
    for (const assembly of item.assemblies) {
      const remedy = assembly.remedies[remedyOf.get(`${item.id} ${assembly.slot}`) ?? -1];
      let chance = assembly.faults['works'] ?? 0;
      if (remedy) {
        for (const [fault, mended] of Object.entries(remedy.mends)) chance += (assembly.faults[fault] ?? 0) * mended;
        chance *= 1 - remedy.harm;
        money += remedy.costMinor;
        minutes += remedy.minutes;
        for (const [part, n] of Object.entries(remedy.uses)) used.set(part, (used.get(part) ?? 0) + n);
        for (const [part, n] of Object.entries(remedy.gives)) used.set(part, (used.get(part) ?? 0) - n);
      }
      if (assembly.started && assembly.started.remedy !== remedy?.id) money += assembly.started.switchMinor;
      pieces.push({ model: item.model, slot: assembly.slot, item: item.whole ? item.id : null, chance });
    }
  }
  let f = 0;
  for (const part of pile.parts)
    for (const fill of part.fills) {
      const count = fills[f++]!;
      used.set(part.id, (used.get(part.id) ?? 0) + count);
      minutes += count * fill.minutes;
      for (let i = 0; i < count; i++) pieces.push({ model: fill.model, slot: fill.slot, item: null, chance: fill.chance });
    }
  const bought = cheapestOrders(pile, used);
  if (bought === null || money + bought.cash > pile.limits.moneyMinor || minutes > pile.limits.minutes) return -Infinity;
  const now = fixed - money - bought.cash - bought.wait + bought.left - (minutes * pile.wishes.hourMinor) / 60;
  return now + expectedLater(pile, pieces, pile.limits.minutes - minutes);
}

/** Every way to buy every missing part from one supplier. */
function cheapestOrders(pile: Pile, used: ReadonlyMap<string, number>): { cash: number; wait: number; left: number } | null {
  const missing = pile.parts.filter((part) => (used.get(part.id) ?? 0) > part.stock);
  let best: { cash: number; wait: number; left: number } | null = null;
  for (const picks of combinations(missing.map(() => pile.suppliers.length))) {
    let [cash, wait] = [0, 0];
    let left = pile.parts.reduce((sum, part) => sum + Math.max(0, part.stock - (used.get(part.id) ?? 0)) * part.keptMinor, 0);
    let possible = true;
    missing.forEach((part, i) => {
      const offer = pile.suppliers[picks[i]!]!.offers.find((each) => each.part === part.id);
      if (!offer) return void (possible = false);
      const lacking = used.get(part.id)! - part.stock;
      const count = Math.max(lacking, offer.least);
      cash += count * offer.unitMinor;
      left += (count - lacking) * part.keptMinor;
    });
    for (const s of new Set(picks)) {
      cash += pile.suppliers[s]!.postageMinor;
      wait += pile.suppliers[s]!.days * pile.wishes.dayMinor;
    }
    if (possible && (best === null || cash + wait - left < best.cash + best.wait - best.left)) best = { cash, wait, left };
  }
  return best;
}

function expectedLater(pile: Pile, pieces: readonly Piece[], minutes: number): number {
  const doubtful = pieces.filter(({ chance }) => chance > 0 && chance < 1);
  let sum = 0;
  for (let bits = 0; bits < 2 ** doubtful.length; bits++) {
    let chance = 1;
    doubtful.forEach((piece, i) => (chance *= bits & (1 << i) ? piece.chance : 1 - piece.chance));
    const works = new Set(pieces.filter((piece) => piece.chance >= 1 || (piece.chance > 0 && bits & (1 << doubtful.indexOf(piece)))));
    sum += chance * bestFinish(pile, pieces, works, minutes);
  }
  return sum;
}

/** Every number of units of every model that what works suffices for. */
function bestFinish(pile: Pile, pieces: readonly Piece[], works: ReadonlySet<Piece>, minutes: number): number {
  const ofModel = pile.models.map((model) => {
    const counts = model.slots.map(
      ({ id }) => pieces.filter((piece) => piece.model === model.id && piece.slot === id && works.has(piece)).length,
    );
    const fails = model.slots.map(
      ({ id }) => pieces.filter((piece) => piece.model === model.id && piece.slot === id && !works.has(piece)).length,
    );
    return { model, counts, fails, originals: wholeOriginals(pile, model, pieces, works) };
  });
  let best = -Infinity;
  for (const built of combinations(ofModel.map(({ counts }) => Math.min(...counts) + 1))) {
    let [worth, used] = [0, 0];
    ofModel.forEach(({ model, counts, fails, originals }, m) => {
      for (let j = 0; j < built[m]!; j++)
        worth += model.soldMinor * model.eachFurther ** j - (model.buildMinutes * pile.wishes.hourMinor) / 60;
      worth += Math.min(built[m]!, originals) * model.original.moreMinor;
      used += built[m]! * model.buildMinutes;
      model.slots.forEach(({ works: working, failed }, s) => {
        worth += (counts[s]! - built[m]!) * Math.max(working.soldMinor, working.keptMinor, working.scrapMinor);
        worth += fails[s]! * Math.max(failed.soldMinor, failed.keptMinor, failed.scrapMinor);
      });
    });
    if (used <= minutes) best = Math.max(best, worth);
  }
  return best;
}

function wholeOriginals(pile: Pile, model: PileModel, pieces: readonly Piece[], works: ReadonlySet<Piece>): number {
  if (model.original.slots.length === 0) return 0;
  const isWhole = ({ id }: PileItem): boolean =>
    model.original.slots.every((slot) => pieces.some((piece) => piece.item === id && piece.slot === slot && works.has(piece)));
  return pile.items.filter((item) => item.model === model.id && item.whole && isWhole(item)).length;
}
