import type { ReactNode } from 'react';
import { RECIPES } from '../../../bench/recipes/index.ts';
import { Fold } from '../ui/fold.tsx';
import { OwnExperience } from './own-experience.tsx';
import { RecipeBody } from './recipe-body.tsx';

interface RecipeFoldProps {
  /** Null where the work has no written recipe: then nothing shows. */
  readonly recipe: string | null;
  readonly modelId: string;
  readonly remedyId: string;
  /** Calculators that this work needs. */
  readonly tools?: ReactNode;
}

/** How a piece of work is done, folded away until asked for. */
export function RecipeFold({ recipe, modelId, remedyId, tools }: RecipeFoldProps) {
  const written = recipe === null ? undefined : RECIPES.get(recipe);
  if (!written) return null;
  return (
    <Fold title={`Step by step: ${written.name.toLowerCase()}`}>
      <OwnExperience modelId={modelId} remedyId={remedyId} />
      <RecipeBody recipe={written} tools={tools} />
    </Fold>
  );
}
