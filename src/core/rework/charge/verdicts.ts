import type { Chemistry } from '../chemistries.ts';
import type { ChargeJudged, ChargeQuestion } from './judge-charge.ts';
import type { ChargeSample } from './sample.ts';

export type Reason =
  | 'ends-as-it-should'
  | 'held-voltage-off'
  | 'over-voltage'
  | 'no-termination'
  | 'never-held'
  | 'current-steady'
  | 'current-drops-out'
  | 'current-too-small'
  | 'current-unknown'
  | 'capacity-good'
  | 'capacity-worn'
  | 'capacity-spent'
  | 'capacity-not-known'
  | 'found-too-low'
  | 'gets-hot'
  | 'high-resistance'
  | 'not-seen-in-a-discharge';

/** One thing judged: good, suspect, bad, or not to be told from this log; why, with the number behind it. */
export interface Verdict {
  readonly state: 'good' | 'suspect' | 'bad' | 'not-known';
  readonly reason: Reason;
  readonly value: number | null;
}

export interface Verdicts {
  readonly port: Verdict;
  readonly charger: Verdict;
  readonly cell: Verdict;
}

/** A cell with so much of its printed capacity is well, or spent. Common practice, no source. */
const WELL = 0.8;
const SPENT = 0.6;
/** More Ω times A h than this and the cell sags under load: 0.15 Ω for 2 A h is 0.3. Common practice, no source. */
const SAGS_OHM_AH = 0.4;

type Found = Pick<ChargeJudged, 'direction' | 'phases' | 'capacityAh' | 'resistance' | 'end' | 'alarms' | 'whole'>;
type Asked = Omit<ChargeQuestion, 'chemistry'> & { readonly cells: number; readonly chemistry: Chemistry };

const verdict = (state: Verdict['state'], reason: Reason, value: number | null = null): Verdict => ({ state, reason, value });

/** What is to be believed of the port, the charger and the cell, each with its reason. */
export const verdictsOf = (samples: readonly ChargeSample[], found: Found, asked: Asked): Verdicts =>
  found.direction === 'discharge'
    ? {
        port: verdict('not-known', 'not-seen-in-a-discharge'),
        charger: verdict('not-known', 'not-seen-in-a-discharge'),
        cell: cellOf(found, asked),
      }
    : { port: portOf(samples, found, asked), charger: chargerOf(found, asked), cell: cellOf(found, asked) };

/** The port and what feeds it: by the current that it lets through. */
function portOf(samples: readonly ChargeSample[], { phases }: Found, { chargerA }: Asked): Verdict {
  const steady = phases.filter(({ kind }) => kind === 'constant-current');
  const breaks = phases.filter(
    ({ kind }, i) => kind === 'rest' && i > 0 && phases.slice(i + 1).some((later) => later.kind === 'constant-current'),
  );
  if (breaks.length > 0) return verdict('bad', 'current-drops-out', breaks.length);
  const longest = steady.toSorted((a, b) => b.seconds - a.seconds)[0];
  if (!longest) return verdict('not-known', 'current-unknown');
  const mine = samples.slice(longest.first, longest.last + 1).map(({ amps }) => amps);
  const lost = mine.filter((amps) => amps < 0.5 * longest.meanA).length;
  if (lost > 0) return verdict('suspect', 'current-drops-out', lost);
  if (chargerA !== undefined && longest.meanA < 0.7 * chargerA) return verdict('suspect', 'current-too-small', longest.meanA);
  return verdict('good', 'current-steady', longest.meanA);
}

/** The charging circuit: by the voltage that it holds, and by its end. */
function chargerOf({ alarms, end }: Found, { chemistry, cells }: Asked): Verdict {
  const over = alarms.find(({ kind }) => kind === 'over-voltage');
  if (over) return verdict('bad', 'over-voltage', over.value);
  const stuck = alarms.find(({ kind }) => kind === 'no-termination');
  if (stuck) return verdict('bad', 'no-termination', stuck.value);
  if (!end || chemistry.fullV === null) return verdict('not-known', 'never-held');
  const off = end.heldV / cells - chemistry.fullV;
  if (Math.abs(off) > chemistry.toleranceV) return verdict('bad', 'held-voltage-off', end.heldV);
  return end.terminated ? verdict('good', 'ends-as-it-should', end.amps) : verdict('not-known', 'never-held', end.amps);
}

function cellOf({ alarms, capacityAh, whole, resistance }: Found, { ratedAh }: Asked): Verdict {
  const low = alarms.find(({ kind }) => kind === 'found-too-low');
  if (low) return verdict('bad', 'found-too-low', low.value);
  const hot = alarms.find(({ kind }) => kind === 'hot' || kind === 'too-hot-to-charge');
  if (hot) return verdict('bad', 'gets-hot', hot.value);
  if (ratedAh === undefined) return verdict('not-known', 'capacity-not-known', capacityAh);
  const share = capacityAh / ratedAh;
  if (whole && share < SPENT) return verdict('bad', 'capacity-spent', share);
  if (resistance && resistance.ohms * ratedAh > SAGS_OHM_AH) return verdict('suspect', 'high-resistance', resistance.ohms);
  if (share >= WELL) return verdict('good', 'capacity-good', share);
  return whole ? verdict('suspect', 'capacity-worn', share) : verdict('not-known', 'capacity-not-known', share);
}
