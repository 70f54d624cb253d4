import { Id } from '../../events/index.ts';
import { AdviceView, BeliefView, DecisionView, ItemFile, ProofView } from '../../views/index.ts';
import type { FileParts } from '../file-parts.ts';

/**
 * The laws of advice: every part fits its schema (so no number is NaN), chances of the hypotheses do not exceed 1, what
 * is advised has a name that can be declined and a why, the chosen road is possible and the best of the possible
 * ones, and tenths lie in order. Throws where one is broken.
 */
export function assertSound({ belief, advice, decision, proof, readings }: FileParts): void {
  BeliefView.parse(belief);
  AdviceView.parse(advice);
  DecisionView.parse(decision);
  ProofView.parse(proof);
  ItemFile.shape.readings.parse(readings);
  Id.parse(advice.id);
  must(belief.hypotheses.reduce((sum, { chance }) => sum + chance, 0) <= 1 + 1e-9, 'hypotheses exceed certainty');
  must(advice.headline.length > 0, 'advice without a headline');
  must(advice.do !== 'check' || advice.check !== null, 'a check is advised and not shown');
  must(!['remedy', 'transplant'].includes(advice.do) || advice.remedy !== null, 'a remedy is advised and not shown');
  must(!advice.declined.some(({ id }) => id === advice.id), 'declined advice came back');
  const chosen = decision.options.find(({ road }) => road === decision.road)!;
  must(chosen.possible, 'the chosen road is not possible');
  for (const option of decision.options) {
    must(!option.possible || option.value_minor <= chosen.value_minor, `${option.road} is better than what was chosen`);
    must(option.low_minor <= option.high_minor, `tenths of ${option.road} are out of order`);
    must(option.why.length > 0, `${option.road} has no why`);
  }
}

function must(holds: boolean, law: string): void {
  if (!holds) throw new Error(law);
}
