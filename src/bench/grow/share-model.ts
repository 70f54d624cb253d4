import { factText } from './fact-text.ts';
import { factsOf } from './facts-of.ts';
import { flattened } from './flattened.ts';
import type { GrownModel } from './grown-model.ts';
import type { ModelBundle } from '../events/index.ts';

/** How the one who gives a model away wants to be called, and under which licence others may use it. */
export interface Giver {
  readonly author: string;
  readonly licence: string;
}

/** A grown model as a bundle. Nothing of the bench goes with it but what `leavingWith` lists. */
export function bundleOf(grown: GrownModel, { author, licence }: Giver): ModelBundle {
  const whole = flattened(grown);
  const { id, name, revision, currency, from } = whole;
  return { format: 'salvor-model', version: 1, model_id: id, name, revision, currency, author, licence, from, facts: factsOf(whole) };
}

/** Everything that leaves with a bundle, a line each. */
export function leavingWith({ model_id: id, name, revision, author, licence, from, facts }: ModelBundle): string[] {
  const start =
    'answers' in from
      ? `six answers: ${JSON.stringify(from.answers)}`
      : 'copy_of' in from
        ? `a copy of ${from.copy_of}`
        : 'a whole model file';
  return [
    `The name of the model: ${name} (${id})${revision === '' ? '' : `, revision ${revision}`}`,
    `Your name in it: ${author}`,
    `The licence: ${licence === '' ? 'none named' : licence}`,
    `What it was begun from: ${start}`,
    ...facts.map((fact) => (fact.author === '' ? factText(fact) : `${factText(fact)}, told by ${fact.author}`)),
  ];
}
