export { COMMON_PRACTICE, type Action, type Heat, type Recipe } from './recipe.ts';
export { heatFor, recipeFor, RECIPES } from './recipe-for.ts';
