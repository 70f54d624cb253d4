import type { Command } from 'commander';
import { CAUTION_WORDS } from '../../../bench/caution-words.ts';
import { heatFor, RECIPES, type Action, type Recipe } from '../../../bench/recipes/index.ts';
import { ALLOYS, workTemperatures, type Alloy } from '../../../core/rework/index.ts';
import type { CliParts } from '../cli-parts.ts';
import { misuse } from '../stop.ts';

/** The written recipes, which need no bench. */
export function recipeCommand(program: Command, parts: CliParts): void {
  program
    .command('recipe')
    .argument('[name]', 'one of the names that the list shows')
    .description('shows how a kind of work is done, or lists the recipes')
    .option('--solder <alloy>', `${Object.keys(ALLOYS).join(', ')}: settings follow from it`, 'SAC305')
    .addHelpText('after', '\nExample: salvor recipe refresh-joint --solder Sn63Pb37')
    .action((name: string | undefined, { solder }: { readonly solder: string }, command: Command) => {
      if (!(solder in ALLOYS))
        throw misuse('bad-usage', { where: '--solder', detail: `--solder is one of ${Object.keys(ALLOYS).join(', ')}` });
      const isJson = Boolean(command.optsWithGlobals().json);
      if (name === undefined) return parts.out(isJson ? JSON.stringify([...RECIPES.values()], null, 2) : listLines().join('\n'));
      const recipe = RECIPES.get(name);
      if (!recipe) throw misuse('bad-usage', { where: 'NAME', detail: `No recipe is called "${name}"; salvor recipe lists them` });
      parts.out(isJson ? JSON.stringify(recipe, null, 2) : recipeLines(recipe, solder as Alloy).join('\n'));
    });
}

const listLines = (): string[] => [...RECIPES.values()].map(({ id, name }) => `${id}  ${name}`);

function recipeLines(recipe: Recipe, solder: Alloy): string[] {
  const dangers = [...new Set(recipe.actions.flatMap(({ cautions }) => cautions))];
  const { jointC } = workTemperatures(solder);
  return [
    recipe.name,
    ...dangers.map((danger) => `! ${CAUTION_WORDS[danger]}`),
    'Have at hand:',
    ...recipe.materials.map((material) => `  ${material}`),
    ...(recipe.actions.some(({ heat }) => heat) ? [`Solder ${solder}: the joint at its hottest ${jointC[0]} to ${jointC[1]} °C`] : []),
    ...recipe.actions.map((action, i) => `${i + 1}. ${action.text}${factsOf(action, solder)}`),
    'Look at after:',
    ...recipe.inspect.map((line) => `  ${line}`),
    'Stop when:',
    ...recipe.stopWhen.map((line) => `  ${line}`),
    recipe.source,
  ];
}

function factsOf(action: Action, solder: Alloy): string {
  const heat = heatFor(action, solder);
  const facts = [
    ...(heat ? [`${action.heat === 'air' ? 'air' : 'tip'} ${heat[0]} to ${heat[1]} °C`] : []),
    ...(action.waitMinutes === undefined ? [] : [`wait ${action.waitMinutes} min`]),
  ];
  return facts.length === 0 ? '' : ` (${facts.join(', ')})`;
}
