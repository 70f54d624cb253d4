import type { Item } from '../state.ts';
import type { AdviceView, ItemFile } from '../views/index.ts';
import { assemblyDecision } from './assembly-decision.ts';
import { adviceAtRest, adviceInDrawer, adviceWithoutModel } from './at-rest.ts';
import { beliefView } from './belief-view.ts';
import { worksChance, type Judged } from './beliefs.ts';
import { decisionView } from './decision.ts';
import type { Desk } from './desk.ts';
import { lifeOf } from './life.ts';
import { proofOf } from './proof.ts';
import { readingsView } from './readings-view.ts';

/** What the bench thinks of an item: the parts of its file that are reckoned, not recorded. */
export type FileParts = Pick<ItemFile, 'belief' | 'advice' | 'decision' | 'proof' | 'readings'>;

export function filePartsOf(desk: Desk, item: Item): FileParts {
  const judged = desk.beliefs.of(item);
  if (!judged) return withoutModel(item);
  const { model } = judged;
  const rest = adviceAtRest(item, desk.state.settings.currency, worksChance(judged));
  const { advice, decision } = item.kind === 'unit' ? unitParts(desk, item, judged, rest) : assemblyParts(desk, item, judged, rest);
  return {
    belief: beliefView(judged, beliefBefore(desk, judged)),
    advice,
    decision,
    proof: proofOf(item, model, lifeOf(item, desk.state.items)),
    readings: readingsView(item.kind === 'unit' ? lifeOf(item, desk.state.items) : item.history, judged),
  };
}

type Thought = Pick<FileParts, 'advice' | 'decision'>;

function unitParts(desk: Desk, item: Item, judged: Judged, rest: AdviceView | null): Thought {
  const weighed = desk.weighJudged(item, judged, desk.donorsFor(item, judged, new Set()));
  return { advice: rest ?? desk.advise(weighed), decision: decisionView(weighed.decision) };
}

function assemblyParts(desk: Desk, item: Item, judged: Judged, rest: AdviceView | null): Thought {
  const advice = rest ?? adviceInDrawer(item, worksChance(judged));
  return { advice, decision: assemblyDecision(judged, desk.state.settings.currency) };
}

/** The same without the last piece of evidence. */
function beliefBefore(desk: Desk, { model, evidence, belief }: Judged): Judged['belief'] {
  return evidence.length === 0 ? belief : desk.beliefs.on(model, evidence.slice(0, -1)).belief;
}

const withoutModel = (item: Item): FileParts => ({
  belief: {
    hypotheses: [{ faults: [], unknown: true, chance: 1, alike: [] }],
    blocks: [],
    none: 0,
    unknown: 1,
    odd: [],
    groups: [],
    repeat: null,
    moved: null,
    knowledge: null,
  },
  advice: adviceWithoutModel(item),
  decision: { road: 'leave', options: [], why: [`Its model "${item.modelId}" is not here, so nothing can be weighed.`] },
  proof: proofOf(item, null),
  readings: [],
});
