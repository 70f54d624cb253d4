import type { RankedCheck } from '../../core/diagnosis/index.ts';
import type { BenchState } from '../../core/diagnosis/readings/index.ts';
import type { CheckView } from '../views/index.ts';
import type { Judged } from './beliefs.ts';
import { expectedAt } from './board/expected-at.ts';
import { servesAll } from './board/group-view.ts';
import { probeView, probeWords } from './board/probe-view.ts';
import { hourly } from './road-option.ts';
import { referenceText } from './readings-view.ts';
import {
  accessoryName,
  blockName,
  faultName,
  functionName,
  listed,
  lower,
  minutesText,
  money,
  percent,
  pointName,
  reading,
  upper,
  whole,
} from './say.ts';

type Money = { readonly currency: string; readonly hourMinor: number };
type Outcome = RankedCheck['outcomes'][number];

/** A shift of a fault's chance smaller than this is not worth a word. */
const WORTH_TELLING = 0.02;

/** A ranked check in the words of its model: what to do, what it may show and mean, and why it is worth its minutes. `bench` is how it stands, where a circuit tells of points. */
export function checkView(judged: Judged, ranked: RankedCheck, cost: Money, bench: BenchState | null): CheckView {
  const { model, device, board } = judged;
  const { check } = ranked;
  const spec = model.file.checks.find((candidate) => candidate.id === check.id)!;
  const point = check.kind === 'measure' ? device.points.find((candidate) => candidate.id === check.point) : undefined;
  const probe = point && board && bench ? probeView(board.known, point.id, bench) : null;
  return {
    id: check.id,
    name: spec.name,
    kind: check.kind,
    target: check.kind === 'try' ? check.function : check.kind === 'look' ? check.block : check.point,
    with: check.kind === 'try' ? [...check.with] : [],
    mode: point?.mode ?? null,
    reference: point ? (referenceText(point) ?? (board && expectedAt(board, point.id)?.text) ?? null) : null,
    minutes: Math.round(ranked.minutes * 10) / 10,
    stage: check.stage,
    saving_minor: whole(ranked.savingMinor),
    saving_per_minute_minor: Math.round(ranked.savingPerMinuteMinor * 10) / 10,
    bits: Math.max(0, ranked.bits),
    outcomes: worthNaming(ranked).map((outcome) => ({
      outcome: outcomeName(outcome, point?.mode),
      chance: Math.min(1, Math.max(0, outcome.chance)),
      means: meaning(judged, outcome),
      range: rangeView(outcome),
      leads_to: board ? leadsTo(judged, outcome) : '',
    })),
    probe,
    how: [...(probe ? [...probe.set, probeWords(probe)] : []), spec.how].filter((line) => line !== '').join(' '),
    cautions: [...spec.cautions],
    why: whyCheck(judged, ranked, cost),
  };
}

/** Outcomes less likely than this are not told of where there are many. */
const SELDOM = 0.005;

const worthNaming = ({ outcomes }: RankedCheck): readonly Outcome[] =>
  outcomes.filter(({ chance, range }) => range === undefined || chance >= SELDOM);

/** The code of an outcome, or the range of its readings: "3.1 V to 3.4 V", "below 0.2 V". */
function outcomeName({ outcome, range }: Outcome, mode: CheckMode = 'volts'): string {
  if (!range || range[0] === Infinity) return outcome;
  const [from, to] = range;
  const [low, high] = [reading(from, mode), reading(to, mode)];
  if (to === Infinity) return Number.isFinite(from) && from !== 0 ? `above ${low}` : 'any number';
  return from === -Infinity || from === 0 ? `below ${high}` : `${low} to ${high}`;
}

type CheckMode = Parameters<typeof reading>[1];

function rangeView({ range }: Outcome): CheckView['outcomes'][number]['range'] {
  if (!range) return null;
  const [from, to] = range;
  const ol = from === Infinity;
  return { from: ol || from === -Infinity ? null : from, to: to === Infinity ? null : to, ol };
}

/** Above this chance a set of faults is what one acts on. */
const ACTED_ON = 0.5;

/** What would be done next after an outcome. */
function leadsTo({ model }: Judged, { sets: [most] }: Outcome): string {
  if (!most || most.chance < ACTED_ON) return 'look further';
  if (most.faults.length === 0) return 'take it for well, and prove it';
  const remedy = servesAll(model.file.remedies, most.faults) ?? servesAll(model.file.remedies, most.faults.slice(0, 1));
  return remedy ? lower(remedy.name) : 'no remedy for it by itself';
}

/** "Measure VSYS at TP3 in volts", "Try the sound with the known-good battery". */
export function checkHeadline({ model }: Judged, { check }: RankedCheck): string {
  if (check.kind === 'look') return `Look at the ${lower(blockName(model, check.block))}`;
  if (check.kind === 'measure') {
    const point = model.file.points.find((candidate) => candidate.id === check.point);
    const name = pointName(model, check.point);
    const mode = point?.mode === 'diode' ? 'diode mode' : (point?.mode ?? 'its mode');
    return name.includes(mode) ? `Measure ${name}` : `Measure ${name} in ${mode}`;
  }
  const aids = check.with.map((id) => lower(accessoryName(model, id)));
  return `Try it: ${lower(functionName(model, check.function))}${aids.length > 0 ? `, with the ${listed(aids)}` : ''}`;
}

function meaning({ model }: Judged, { marginalShift }: Outcome): string {
  const told = marginalShift
    .filter(({ from, to }) => Math.abs(to - from) >= WORTH_TELLING)
    .sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from))
    .slice(0, 3);
  if (told.length === 0) return 'changes little';
  return told.map(({ fault, from, to }) => `${faultName(model, fault)} ${percent(from)} → ${percent(to)}`).join(', ');
}

function whyCheck(judged: Judged, ranked: RankedCheck, { currency, hourMinor }: Money): string[] {
  const cost = hourly(ranked.minutes, hourMinor);
  const price = `its ${minutesText(ranked.minutes)} cost ${money(cost, currency)}`;
  const saving =
    ranked.savingMinor >= cost
      ? `Knowing it saves ${money(ranked.savingMinor, currency)} on what follows, ${money(ranked.savingPerMinuteMinor, currency)} a minute; ${price}.`
      : `By itself it saves ${money(ranked.savingMinor, currency)} on what follows; it tells ${ranked.bits.toFixed(2)} bits; ${price}.`;
  const mode = ranked.check.kind === 'measure' ? modeAt(judged, ranked.check.point) : undefined;
  const outcomes = worthNaming(ranked).map((o) => `${outcomeWords(o, mode)} (${percent(o.chance)}): ${meaning(judged, o)}.`);
  return [splits(judged, ranked), saving, ...outcomes];
}

/** The faults between which the outcomes tell most. */
function splits({ model }: Judged, { outcomes }: RankedCheck): string {
  const spread = new Map<string, number>();
  for (const outcome of outcomes)
    for (const { fault, from, to } of outcome.marginalShift)
      spread.set(fault, (spread.get(fault) ?? 0) + outcome.chance * Math.abs(to - from));
  const most = [...spread].filter(([, by]) => by >= WORTH_TELLING / 2).sort((a, b) => b[1] - a[1]);
  if (most.length === 0) return 'It tells little apart.';
  return `It tells most about: ${listed(most.slice(0, 3).map(([fault]) => faultName(model, fault)))}.`;
}

const outcomeWords = (outcome: Outcome, mode?: CheckMode): string =>
  upper(outcome.range ? outcomeName(outcome, mode) : outcome.outcome.replaceAll('-', ' '));

const modeAt = ({ model }: Judged, point: string): CheckMode | undefined => model.file.points.find(({ id }) => id === point)?.mode;
