import { useState } from 'react';
import { recipeFor } from '../../../bench/recipes/index.ts';
import { RecipeTools } from '../calculators/recipe-tools.tsx';
import { useDrawer } from '../api/queries.ts';
import { RecipeFold } from '../recipes/recipe-fold.tsx';
import { Cautions } from '../ui/cautions.tsx';
import { Pick } from '../ui/pick.tsx';
import { nameIn } from './answer-form.ts';
import { RemedyForm } from './remedy-form.tsx';
import { useUnit } from './unit-context.ts';

/** Any work of the model that is not a transplant: those are done at the slots. */
export function AnyRemedyForm() {
  const { model } = useUnit();
  const drawer = useDrawer();
  const remedies = model.remedies.filter((remedy) => remedy.slot === undefined);
  const [picked, setPicked] = useState(remedies[0]?.id);
  const spec = remedies.find((remedy) => remedy.id === picked);
  if (spec === undefined) return <p>The model knows of no work on the board. Swap assemblies under “What it holds”.</p>;
  const recipe = recipeFor(spec)?.id ?? null;
  const bags = drawer.data?.bags ?? [];
  const parts = spec.parts.map((part) => ({
    ...part,
    name: nameIn(model.parts, part.part),
    in_drawer: bags.filter((bag) => bag.part === part.part).reduce((sum, bag) => sum + bag.count, 0),
  }));
  return (
    <div className="form">
      <Pick label="Work" options={remedies} value={spec.id} onChange={setPicked} />
      {spec.how !== '' && <p>{spec.how}</p>}
      <Cautions cautions={spec.cautions} />
      <RecipeFold recipe={recipe} modelId={model.id} remedyId={spec.id} tools={<RecipeTools recipe={recipe} spots={[]} />} />
      <RemedyForm key={spec.id} remedy={{ id: spec.id, name: spec.name, minutes: spec.minutes, parts }} />
    </div>
  );
}
