import type { Claim } from '../../../bench/events/index.ts';
import type { ReadableModel, ReadClaim, Remark } from '../../../bench/scout/index.ts';
import { FINDING_WORDS, OUTCOME_WORDS } from '../format/words.ts';

/** "Sound: fails", in the words of the model. */
export function claimWords(model: ReadableModel, claim: Claim): string {
  if (claim.about === 'untested') return 'Untested';
  if (claim.about === 'function') return `${nameIn(model.functions, claim.function)}: ${OUTCOME_WORDS[claim.says].toLowerCase()}`;
  return `${nameIn(model.blocks, claim.place)}: ${FINDING_WORDS[claim.sees].toLowerCase()}`;
}

const nameIn = (named: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  named.find((each) => each.id === id)?.name ?? id;

/** By which rule it was read, and what speaks against it. */
export function ruleWords({ rule, hedged, contradicted, unit }: ReadClaim): string {
  const notes = [
    ...(unit === null ? [] : [`unit ${unit}`]),
    `rule: ${rule}`,
    ...(hedged ? ['said in doubt or of the past'] : []),
    ...(contradicted ? ['the text also says the opposite'] : []),
  ];
  return notes.join(' · ');
}

const REMARKS: Readonly<Record<Remark['code'], string>> = {
  denied: 'said not to be so; no claim is made of it',
  'not-in-model': 'this model has nothing of the kind',
  condition: 'a condition or a wish, not a claim',
  'as-is': 'sold without any promise',
  'part-untested': 'only this was not tried',
};
export const remarkWords = ({ words, code }: Remark): string => `“${words}”: ${REMARKS[code]}`;
