import type { Belief } from '../../core/diagnosis/index.ts';
import type { Evidence } from '../../core/diagnosis/model.ts';
import type { Model } from '../models/index.ts';
import type { BeliefView, OutlookView } from '../views/index.ts';
import type { Judged } from './beliefs.ts';
import { boardModelBehind } from './board/board-model.ts';
import { doubtedReading } from './board/doubted-reading.ts';
import { groupViews, MOST_ALIKE } from './board/group-view.ts';
import { blocksOfSlot } from './device-model.ts';
import { eventOf } from './evidence.ts';
import { namedFault } from './named-fault.ts';
import { accessoryName, blockName, functionName, listed, percent, pointName, reading, remedyName } from './say.ts';
import { clamp, faultyChance, nothingWrong } from './well-chance.ts';

const MOST_HYPOTHESES = 8;
const LEAST_CHANCE = 0.005;

/**
 * The likeliest sets of faults, with "nothing is wrong" and "not in the model" in their places; at most eight. Sets that no check tells apart are one, named
 * by the likeliest of them. What is not there is part of each.
 */
export function hypothesesOf(model: Model, belief: Belief): OutlookView['hypotheses'] {
  const absent = absentThings(model, belief.absent);
  const known = merged(model, belief.sets).map(({ faults, alike, chance }) => ({
    faults: [...absent, ...faults.map((id) => namedFault(model, id))],
    unknown: false,
    chance: clamp(chance),
    alike: alike.slice(0, MOST_ALIKE).map((id) => namedFault(model, id)),
  }));
  return [...known, { faults: [], unknown: true, chance: clamp(belief.unknown), alike: [] }]
    .filter(({ chance }) => chance >= LEAST_CHANCE)
    .sort((a, b) => b.chance - a.chance)
    .slice(0, MOST_HYPOTHESES);
}

/** What is not there: an assembly where all its blocks are missing, a block otherwise. */
function absentThings(model: Model, absent: Belief['absent']): OutlookView['hypotheses'][number]['faults'] {
  const slots = model.file.slots.map(({ id, name }) => ({ name, blocks: blocksOfSlot(model.file, id) }));
  const whole = slots.filter(({ blocks }) => blocks.length > 1 && blocks.every((block) => absent.has(block)));
  const within = new Set(whole.flatMap(({ blocks }) => blocks));
  const things = [
    ...whole.map(({ name, blocks }) => ({ name, block: blocks[0]! })),
    ...[...absent].filter((block) => !within.has(block)).map((block) => ({ name: blockName(model, block), block })),
  ];
  return things.map(({ name, block }) => ({ id: `${block}.absent`, name: `${name} is not there`, block, refs: [] }));
}

interface Alike {
  readonly faults: readonly string[];
  readonly alike: string[];
  chance: number;
}

/** Sets, likeliest first, with those that nothing tells apart counted together. */
function merged(model: Model, sets: Belief['sets']): Alike[] {
  const groups = boardModelBehind(model)?.groups();
  const byKey = new Map<string, Alike>();
  for (const { faults, chance } of sets) {
    const key = faults
      .map((id) => String(groups?.get(id) ?? id))
      .sort()
      .join(' ');
    const same = byKey.get(key);
    if (!same) byKey.set(key, { faults, alike: [], chance });
    else {
      same.chance += chance;
      same.alike.push(...faults.filter((id) => !same.faults.includes(id) && !same.alike.includes(id)));
    }
  }
  return [...byKey.values()];
}

/** What is believed of an item, block by block; `before` is the belief without its last piece of evidence. */
export function beliefView(judged: Judged, before: Belief): BeliefView {
  const { model, belief, slot, board } = judged;
  const blocks = slot === null ? model.file.blocks.map(({ id }) => id) : blocksOfSlot(model.file, slot);
  return {
    hypotheses: hypothesesOf(model, belief),
    blocks: blocks.map((id) => ({
      id,
      name: blockName(model, id),
      chance: faultyChance(model, belief, id),
      before: faultyChance(model, before, id),
    })),
    none: nothingWrong(belief),
    unknown: clamp(belief.unknown),
    odd: oddViews(judged),
    groups: board ? groupViews(board.known, belief) : [],
    repeat: repeatView(judged),
    moved: movedView(judged, before),
    knowledge: board ? { done: board.known.knowledge.done, rows: board.known.knowledge.rows } : null,
  };
}

function oddViews({ model, belief, evidence }: Judged): BeliefView['odd'] {
  return belief.odd.flatMap(({ evidenceId, chance }) => {
    const piece = evidence[Number(evidenceId)];
    if (!piece) return [];
    const text = `${sayEvidence(model, piece)} does not fit the rest: given all else, its chance was ${percent(chance)}.`;
    return [{ event_id: eventOf(piece.id), text, chance: clamp(chance) }];
  });
}

function repeatView({ model, board, evidence }: Judged): BeliefView['repeat'] {
  const doubted = board && doubtedReading(board.belief, evidence);
  if (!doubted) return null;
  const { point, slip } = doubted;
  const text = `${sayEvidence(model, { ...doubted, kind: 'reading' })} disagrees with the rest: ${percent(slip)} that it says nothing. Take it once more.`;
  const mode = model.file.points.find(({ id }) => id === point)!.mode;
  return { event_id: eventOf(doubted.id), point, name: pointName(model, point), mode, text, slip: clamp(slip) };
}

/** A fault whose chance moved less is not worth a line. */
const WORTH_TELLING = 0.01;
const MOST_MOVED = 5;

function movedView({ model, belief, evidence }: Judged, before: Belief): BeliefView['moved'] {
  const last = evidence.at(-1);
  if (!last) return null;
  const faults = [...belief.marginal]
    .map(([id, chance]) => ({ id, chance, before: before.marginal.get(id) ?? 0 }))
    .filter((each) => Math.abs(each.chance - each.before) >= WORTH_TELLING)
    .sort((a, b) => Math.abs(b.chance - b.before) - Math.abs(a.chance - a.before))
    .slice(0, MOST_MOVED);
  return {
    event_id: eventOf(last.id),
    text: sayEvidence(model, last),
    faults: faults.map(({ id, ...chances }) => ({
      ...namedFault(model, id),
      before: clamp(chances.before),
      chance: clamp(chances.chance),
    })),
  };
}

const BEHAVES = { works: 'works', fails: 'fails', 'comes-and-goes': 'comes and goes' } as const;
const seenWords = (sees: string): string => sees.replaceAll('-', ' ');

/** A piece of evidence as the beginning of a sentence. */
function sayEvidence(model: Model, piece: Evidence): string {
  switch (piece.kind) {
    case 'claim':
      return `The claim "${functionName(model, piece.function)} ${BEHAVES[piece.says]}"`;
    case 'claim-place':
      return `The claim "${blockName(model, piece.block)}: ${seenWords(piece.sees)}"`;
    case 'trial': {
      const aids = piece.with.map((id) => accessoryName(model, id));
      const using = aids.length > 0 ? ` with ${listed(aids)}` : '';
      return `The trial "${functionName(model, piece.function)} ${BEHAVES[piece.outcome]}${using}"`;
    }
    case 'finding':
      return `The finding "${piece.part ?? blockName(model, piece.block)}: ${seenWords(piece.sees)}"`;
    case 'reading':
      return `The reading at ${pointName(model, piece.point)}${readingText(model, piece)}`;
    case 'not-well':
      return 'The failed step of proof';
    case 'remedy':
      return `What was seen after "${remedyName(model, piece.remedy)}"`;
    case 'transplant':
      return 'The transplant';
  }
}

function readingText(model: Model, piece: Extract<Evidence, { kind: 'reading' }>): string {
  const mode = model.file.points.find((point) => point.id === piece.point)?.mode;
  return mode ? ` (${reading(piece.value, mode)})` : '';
}
