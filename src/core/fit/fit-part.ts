import { bestTrial, type Matching, type Trial } from './align.ts';
import { BENDABLE_MM, LIMITS, type Answer, type Ask, type FitAnswer, type HoleFit, type PadFit, type Reason } from './answer.ts';
import { fitAttributes } from './fit-attributes.ts';
import { fitHoles, holeAsks, holeReasons } from './fit-holes.ts';
import { feetAsk, fitPads, padReasons, strayReasons } from './fit-pads.ts';
import { conductors } from './lands.ts';
import type { Pattern } from './pattern.ts';
import { otherUse, pinOrderReason } from './pin-order.ts';
import { worked, type Worked } from './seat.ts';

const NOWHERE = { turnDeg: 0, dxMm: 0, dyMm: 0 };

/**
 * Whether a part fits a place of a board: the best way to lay it there, pad by pad and hole by hole, why it does not line up, and what the data do not say.
 * Lands stand for terminals where those are not known, so an answer from them says less. Both are seen from the side on which the part sits.
 */
export function fitPart(partPattern: Pattern, placePattern: Pattern): FitAnswer {
  const [part, place] = [worked(partPattern), worked(placePattern)];
  for (const [of, { lands }] of [['part', part] as const, ['place', place] as const])
    if (lands.length === 0) return blank({ code: 'no-pads', of });
  const matching = matchingOf(part, place);
  const trial = bestTrial(part, place, matching);
  const pads = fitPads(trial.seat, trial.partners);
  const holes = fitHoles(trial.seat.holes, place.holes);
  const { reasons, asks } = judge(part, place, matching, trial, pads, holes);
  const bendMm = Math.max(0, ...pads.map((pad) => pad.bendMm), ...holes.map((hole) => hole.bendMm));
  const answer = answerOf(reasons, asks, part.pattern.basis === 'feet' || part.holes.length > 0 ? bendMm : 0);
  const used = new Set(pads.flatMap(({ onto }) => onto));
  return {
    answer,
    placing: trial.placing,
    alignedOn: trial.on,
    bendMm: answer === 'fits-after-bending' ? bendMm : 0,
    leastOverlap: trial.score[1],
    pads,
    holes,
    unused: [...new Set(place.lands.flatMap(({ names }) => names))].filter((name) => !used.has(name)),
    reasons,
    asks,
  };
}

/** By the names of pins when both are numbered and share some; else by where the pads lie. */
function matchingOf(part: Worked, place: Worked): Matching {
  const names = new Set(place.lands.flatMap((land) => land.names));
  const shareNames = part.lands.some((land) => land.names.some((name) => names.has(name)));
  if (!part.pattern.numbered || !place.pattern.numbered || !shareNames) return { by: 'place' };
  return { by: 'name', conductor: conductors([part.pattern, place.pattern], [part.lands, place.lands]) };
}

function judge(part: Worked, place: Worked, matching: Matching, trial: Trial, pads: readonly PadFit[], holes: readonly HoleFit[]) {
  const { seat, partners } = trial;
  const without = pads.filter(({ room }) => room === null).flatMap(({ pins }) => pins);
  const shape: Reason[] = [
    ...(without.length > 0 ? [{ code: 'pin-without-pad' as const, pins: without }] : []),
    ...padReasons(seat, place, pads),
    ...holeReasons(holes, BENDABLE_MM[part.pattern.kind]!),
  ];
  const onlyOff = shape.length > 0 && shape.every(({ code }) => code === 'pad-off');
  const order = onlyOff && matching.by === 'name' ? pinOrderReason(part, place, matching) : undefined;
  const attributes = fitAttributes(seat.pattern, place.pattern);
  const stray = shape.length === 0 ? strayReasons(seat, place, partners) : [];
  const reasons = [...(order ? [order] : shape), ...stray, ...(matching.by === 'name' ? otherUse(part, place) : []), ...attributes.reasons];
  const pinOne: Ask[] = matching.by === 'place' ? [{ code: 'pin-1', decides: part.lands.length > 2 }] : [];
  const asks = [...(shape.length === 0 ? feetAsk(seat, pads) : []), ...holeAsks(holes, place.holes), ...pinOne, ...attributes.asks];
  return { reasons, asks };
}

function answerOf(reasons: readonly Reason[], asks: readonly Ask[], bendMm: number): Answer {
  if (reasons.length > 0) return 'does-not-line-up';
  if (asks.some(({ decides }) => decides)) return 'cannot-say';
  return bendMm > LIMITS.noBendMm ? 'fits-after-bending' : 'fits';
}

const blank = (reason: Reason): FitAnswer => ({
  answer: 'cannot-say',
  placing: NOWHERE,
  alignedOn: 'nothing',
  bendMm: 0,
  leastOverlap: 0,
  pads: [],
  holes: [],
  unused: [],
  reasons: [reason],
  asks: [],
});
