import type { RemedyView } from '../../../bench/views/index.ts';
import { RecipeTools } from '../calculators/recipe-tools.tsx';
import { money } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { isDeeper } from '../format/words.ts';
import { RecipeFold } from '../recipes/recipe-fold.tsx';
import { Cautions } from '../ui/cautions.tsx';
import { Why } from '../ui/why.tsx';
import { OpeningLink } from './opening-link.tsx';
import { RemedyForm } from './remedy-form.tsx';
import { TransplantForm } from './transplant-form.tsx';
import { remedyStage } from './remedy-stage.ts';
import { useUnit } from './unit-context.ts';

/** One remedy: how, what it takes, what to mind, and the form for when it is done. */
export function NextRemedy({ remedy, saysWhy = false }: { readonly remedy: RemedyView; readonly saysWhy?: boolean }) {
  const unit = useUnit();
  const { bench, file } = unit;
  const stage = remedyStage(remedy, unit);
  return (
    <div className="form">
      <p className="small muted">
        Works after it: {chance(remedy.chance)} · about {duration(remedy.minutes)} · costs {money(remedy.cost_minor, bench.currency)} in
        minutes and parts
        {remedy.risk > 0 && ` · ruins it: ${chance(remedy.risk)}`}
      </p>
      {isDeeper(stage, file.stage) && <OpeningLink goal={{ kind: 'remedy', remedy: remedy.id }} stage={stage} />}
      {remedy.how !== '' && <p>{remedy.how}</p>}
      <Cautions cautions={remedy.cautions} />
      <RecipeFold
        recipe={remedy.recipe}
        modelId={file.model.id}
        remedyId={remedy.id}
        tools={<RecipeTools recipe={remedy.recipe} spots={remedy.spots} />}
      />
      {remedy.slot === null ? <RemedyForm remedy={remedy} /> : <TransplantForm remedy={remedy} slot={remedy.slot} />}
      {saysWhy && <Why lines={remedy.why} summary="Why this remedy?" />}
    </div>
  );
}
