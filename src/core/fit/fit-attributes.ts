import { LIMITS, type Ask, type Reason } from './answer.ts';
import type { Pattern } from './pattern.ts';
import { sameTurn } from './turn.ts';

const PLUGGED = ['connector', 'ribbon-socket'];

/** Which of the two does not know it; undefined when both do. */
function lacking(part: unknown, place: unknown): 'part' | 'place' | 'both' | undefined {
  if (part === null) return place === null ? 'both' : 'part';
  return place === null ? 'place' : undefined;
}

/** Height, mouth and side of contact of a part that lies over its place: what speaks against it, and what is not known. */
export function fitAttributes(part: Pattern, place: Pattern): { readonly reasons: Reason[]; readonly asks: Ask[] } {
  const reasons: Reason[] = [];
  const asks: Ask[] = [];
  height(part, place, reasons, asks);
  if (PLUGGED.includes(part.kind)) mouth(part, place, reasons, asks);
  if (part.kind === 'ribbon-socket') contacts(part, place, reasons, asks);
  return { reasons, asks };
}

function height(part: Pattern, place: Pattern, reasons: Reason[], asks: Ask[]): void {
  const of = lacking(part.heightMm, place.heightMm);
  if (of) asks.push({ code: 'height', decides: false, of });
  else if (part.heightMm! > place.heightMm!) reasons.push({ code: 'too-high', byMm: part.heightMm! - place.heightMm! });
}

function mouth(part: Pattern, place: Pattern, reasons: Reason[], asks: Ask[]): void {
  const of = lacking(part.mouth, place.mouth);
  if (of) return void asks.push({ code: 'mouth', decides: false, of });
  const turn = sameTurn(part.mouth!.facesDeg - place.mouth!.facesDeg);
  const byDeg = Math.min(turn, 360 - turn);
  if (byDeg > LIMITS.mouthDeg) return void reasons.push({ code: 'mouth-turned', byDeg });
  const reach = lacking(part.mouth!.reachMm, place.mouth!.reachMm);
  if (reach) return void asks.push({ code: 'mouth-reach', decides: false, of: reach });
  const byMm = part.mouth!.reachMm! - place.mouth!.reachMm!;
  if (Math.abs(byMm) > LIMITS.mouthReachMm) reasons.push({ code: 'mouth-off', byMm });
}

function contacts(part: Pattern, place: Pattern, reasons: Reason[], asks: Ask[]): void {
  const of = lacking(part.contacts, place.contacts);
  if (of) return void asks.push({ code: 'contacts', decides: true, of });
  const same = part.contacts === place.contacts || part.contacts === 'both';
  if (!same) reasons.push({ code: 'contacts-other-side' });
}
