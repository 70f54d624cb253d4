import type { DrawerView, ModelRow } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { AddBagForm } from './add-bag-form.tsx';
import { UseBagForm } from './use-bag-form.tsx';

/** Bags of loose parts: how many, where, at what cost. */
export function BagsSection({ drawer, models }: { readonly drawer: DrawerView; readonly models: readonly ModelRow[] }) {
  return (
    <Section id="bags" title="Bags of parts">
      {drawer.bags.length === 0 && <p className="muted">No bag yet.</p>}
      <div>
        {drawer.bags.map((bag) => (
          <Fold
            key={bag.id}
            title={
              <>
                {bag.count} × {bag.name}{' '}
                <span className="small muted">
                  {bag.place !== '' && `${bag.place} · `}
                  {money(bag.cost_minor, drawer.currency)}
                </span>{' '}
                {bag.low && <span className="low">running low</span>}
              </>
            }
          >
            <UseBagForm bag={bag} />
          </Fold>
        ))}
        <Fold title="Add a bag that was bought">
          <AddBagForm currency={drawer.currency} models={models} />
        </Fold>
      </div>
    </Section>
  );
}
