import { Link } from 'wouter';
import type { PileView, PlanView } from '../../../bench/views/index.ts';
import { usePlan } from '../api/queries.ts';
import { roughMoney } from '../format/money.ts';
import { duration } from '../format/number.ts';
import { UnitLines } from '../pile/unit-lines.tsx';
import { Trouble } from '../ui/answer.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { PlanBaskets } from './plan-baskets.tsx';
import { PlanItems } from './plan-items.tsx';
import { PlanWorth } from './plan-worth.tsx';
import { SuppliersForm } from './suppliers-form.tsx';
import { WishesForm } from './wishes-form.tsx';

const FINISHED: ReadonlySet<string> = new Set(['proved', 'listed']);

/** The plan of the whole pile; until it stands, the advice on each unit alone. */
export function PlanSection({ pile }: { readonly pile: PileView }) {
  const plan = usePlan();
  const finished = pile.plan.filter(({ row }) => FINISHED.has(row.status));
  return (
    <>
      {plan.data ? (
        <Planned view={plan.data} pile={pile} />
      ) : (
        <Section id="plan" title="The plan">
          {plan.isError ? (
            <Trouble error={plan.error} retry={() => void plan.refetch()} />
          ) : (
            <output className="small muted">
              Asking for the plan of the whole pile. Until it is here, this is the advice on each unit alone.
            </output>
          )}
          <Unplanned pile={pile} />
        </Section>
      )}
      {finished.length > 0 && (
        <Section id="finished" title="Finished, to be sold">
          <UnitLines lines={finished} currency={pile.currency} />
        </Section>
      )}
    </>
  );
}

function Planned({ view, pile }: { readonly view: PlanView; readonly pile: PileView }) {
  const { plan, currency } = view;
  return (
    <>
      <Section
        id="plan"
        title="The plan"
        aside={plan ? `expected ${roughMoney(plan.profit.mean_minor, currency)} in about ${duration(plan.minutes)}` : undefined}
      >
        <output className="small muted">{view.note}</output>
        {view.broken.length > 0 && (
          <div className="trouble" role="alert">
            <p>
              {plan
                ? 'What you decided would break a limit, so this is the plan without it:'
                : 'The plan that was found broke a law and is not shown:'}{' '}
              {view.broken.join('; ')}.
            </p>
          </div>
        )}
        {view.changes.length > 0 && (
          <Fold title="What changed, and why">
            <ul>
              {view.changes.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </Fold>
        )}
        {plan && <PlanItems plan={plan} currency={currency} />}
        {!plan && <Unplanned pile={pile} />}
      </Section>
      {plan && <PlanBaskets plan={plan} currency={currency} />}
      {plan && <PlanWorth plan={plan} currency={currency} assumed={view.assumed} />}
      <Section id="wishes" title="What the plan goes by">
        <Fold title="Hours, money and risk">
          <WishesForm key={JSON.stringify(view.wishes)} wishes={view.wishes} currency={currency} />
        </Fold>
        <Fold title={`Suppliers (${view.suppliers.length})`}>
          <SuppliersForm suppliers={view.suppliers} parts={view.parts} currency={currency} />
        </Fold>
      </Section>
    </>
  );
}

/** The advice on each unit alone, the quick first answer. */
function Unplanned({ pile }: { readonly pile: PileView }) {
  const lines = pile.plan.filter(({ row }) => !FINISHED.has(row.status));
  if (lines.length > 0) return <UnitLines lines={lines} currency={pile.currency} />;
  return (
    <p>
      Nothing waits for you. <Link href="/scout">Scout for the next one</Link>.
    </p>
  );
}
