import { useState, type ReactNode } from 'react';
import type { Alloy } from '../../../core/rework/index.ts';
import { heatFor, type Action, type Recipe } from '../../../bench/recipes/index.ts';
import { duration } from '../format/number.ts';
import { Cautions } from '../ui/cautions.tsx';
import { AlloyPick } from './alloy-pick.tsx';
import { CAUTION_NAMES } from './caution-names.ts';

const TOOL_WORDS = { 'tip-fine': 'fine tip', 'tip-heavy': 'heavy tip', air: 'air at the mouth' } as const;

/** A written recipe: what is needed, the actions in their order with heat and waits, what to look at after, and when to stop. */
export function RecipeBody({ recipe, tools }: { readonly recipe: Recipe; readonly tools: ReactNode }) {
  const [alloy, setAlloy] = useState<Alloy>('SAC305');
  const [onLead, setOnLead] = useState(false);
  const dangers = [...new Set(recipe.actions.flatMap(({ cautions }) => cautions))];
  const waits = recipe.actions.reduce((sum, { waitMinutes = 0 }) => sum + waitMinutes, 0);
  return (
    <div className="form recipe">
      <Cautions cautions={dangers} />
      <Lines title="Have at hand" lines={recipe.materials} />
      {recipe.actions.some(({ heat }) => heat) && <AlloyPick alloy={alloy} onChange={setAlloy} onLead={onLead} onLeadChange={setOnLead} />}
      {tools}
      <div>
        <h3>In this order</h3>
        <ol className="steps">
          {recipe.actions.map((action) => (
            <li key={action.text}>
              {action.text} <ActionFacts action={action} alloy={alloy} />
            </li>
          ))}
        </ol>
        {waits > 0 && <p className="small muted">Your hands are free for {duration(waits)} of it.</p>}
      </div>
      <Lines title="Look at after" lines={recipe.inspect} />
      <Lines title="Stop when" lines={recipe.stopWhen} />
      <p className="small muted">{recipe.source}</p>
    </div>
  );
}

function ActionFacts({ action, alloy }: { readonly action: Action; readonly alloy: Alloy }) {
  const heat = heatFor(action, alloy);
  const facts = [
    heat && action.heat ? `${TOOL_WORDS[action.heat]} ${heat[0]} to ${heat[1]} °C` : '',
    action.waitMinutes === undefined ? '' : `wait ${duration(action.waitMinutes)}`,
    action.cautions.length > 0 ? `take care: ${action.cautions.map((caution) => CAUTION_NAMES[caution]).join(', ')}` : '',
  ].filter((fact) => fact !== '');
  return <span className="small muted">{facts.join(' · ')}</span>;
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <div>
      <h3>{title}</h3>
      <ul className="plain-list">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
