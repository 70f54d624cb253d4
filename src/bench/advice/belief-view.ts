import type { Belief } from '../../core/diagnosis/index.ts';
import type { Evidence } from '../../core/diagnosis/model.ts';
import type { Model } from '../models/index.ts';
import type { BeliefView, OutlookView } from '../views/index.ts';
import type { Judged } from './beliefs.ts';
import { blocksOfSlot } from './device-model.ts';
import { eventOf } from './evidence.ts';
import { accessoryName, blockName, faultName, functionName, listed, percent, pointName, reading, remedyName } from './say.ts';
import { clamp, faultyChance, nothingWrong } from './well-chance.ts';

const MOST_HYPOTHESES = 8;
const LEAST_CHANCE = 0.005;

/** The likeliest sets of faults, with "nothing is wrong" and "not in the model" in their places; at most eight. What is not there is part of each. */
export function hypothesesOf(model: Model, belief: Belief): OutlookView['hypotheses'] {
  const faults = new Map(model.file.faults.map((fault) => [fault.id, fault]));
  const absent = [...belief.absent].map((block) => ({
    id: `${block}.absent`,
    name: `${blockName(model, block)} is not there`,
    block,
    refs: [],
  }));
  const known = belief.sets.map((set) => ({
    faults: [...absent, ...set.faults.map((id) => ({ id, name: faultName(model, id), block: faults.get(id)?.block ?? '', refs: [] }))],
    unknown: false,
    chance: clamp(set.chance),
    alike: [],
  }));
  return [...known, { faults: [], unknown: true, chance: clamp(belief.unknown), alike: [] }]
    .filter(({ chance }) => chance >= LEAST_CHANCE)
    .sort((a, b) => b.chance - a.chance)
    .slice(0, MOST_HYPOTHESES);
}

/** What is believed of an item, block by block; `before` is the belief without its last piece of evidence. */
export function beliefView({ model, belief, evidence, slot }: Judged, before: Belief): BeliefView {
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
    odd: belief.odd.flatMap(({ evidenceId, chance }) => {
      const piece = evidence[Number(evidenceId)];
      if (!piece) return [];
      const text = `${sayEvidence(model, piece)} does not fit the rest: given all else, its chance was ${percent(chance)}.`;
      return [{ event_id: eventOf(piece.id), text, chance: clamp(chance) }];
    }),
    groups: [],
    repeat: null,
    moved: null,
    knowledge: null,
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
      return `The finding "${blockName(model, piece.block)}: ${seenWords(piece.sees)}"`;
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
