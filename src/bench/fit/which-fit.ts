import { assertFit, drawFit, rankFits, type Ask, type FitAnswer, type PadFit, type Pattern } from '../../core/fit/index.ts';
import type { FitLine } from '../views/index.ts';
import { askSentence, fitSentence, reasonSentence } from './fit-words.ts';

/** A part that may go on a place, and where it is to be had. */
export interface Candidate extends Pick<FitLine, 'name' | 'from' | 'bag_id' | 'count' | 'supplier' | 'price'> {
  readonly pattern: Pattern;
}

/** A part at hand as a file or from typed numbers. */
export const given = (name: string, pattern: Pattern): Candidate => ({
  name,
  from: 'given',
  bag_id: null,
  count: null,
  supplier: '',
  price: '',
  pattern,
});

/**
 * Which of these parts go on a place, the best first, each with its answer, its reasons, what to measure, every pad, and a picture. Throws `FitError` when an answer breaks
 * the law of a fit. Stops when told to: then `done` is false and only those that were tried are there.
 */
export function whichFit(
  place: Pattern,
  candidates: readonly Candidate[],
  shouldStop: () => boolean = () => false,
): { readonly done: boolean; readonly fits: FitLine[] } {
  const { done, fits } = rankFits(place, candidates, shouldStop);
  return { done, fits: fits.map(({ part, fit }) => lineOf(part, place, fit)) };
}

function lineOf({ pattern, ...about }: Candidate, place: Pattern, fit: FitAnswer): FitLine {
  assertFit(pattern, place, fit);
  const { placing } = fit;
  return {
    name: about.name,
    from: about.from,
    bag_id: about.bag_id,
    count: about.count,
    supplier: about.supplier,
    price: about.price,
    answer: fit.answer,
    sentence: fitSentence(fit),
    bend_mm: fit.bendMm,
    reasons: fit.reasons.map((reason) => ({ code: reason.code, sentence: reasonSentence(reason) })),
    asks: fit.asks.map((ask) => ({ code: ask.code, of: whoseIs(ask), decides: ask.decides, sentence: askSentence(ask) })),
    placing: { turn_deg: placing.turnDeg, dx_mm: placing.dxMm, dy_mm: placing.dyMm },
    found_by: fit.alignedOn,
    pads: fit.pads.map(padLine),
    unused: [...fit.unused],
    picture: drawFit(pattern, place, fit, `${about.name} over ${place.name}: ${fitSentence(fit)}`),
  };
}

const whoseIs = (ask: Ask): 'part' | 'place' | 'both' | null => ('of' in ask ? ask.of : null);

const padLine = ({ pins, onto, overlap, offMm, bendMm, room, level }: PadFit): FitLine['pads'][number] => ({
  pins: [...pins],
  onto: [...onto],
  covered: overlap,
  off_mm: Math.hypot(...offMm),
  bend_mm: bendMm,
  room: room && { toe_mm: room.toeMm, heel_mm: room.heelMm, side_mm: room.sideMm },
  level,
});
