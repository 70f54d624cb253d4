import type { DrawerView, ModelRow } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { AddBagForm } from './add-bag-form.tsx';
import { BagFold } from './bag-fold.tsx';

interface BagsSectionProps {
  readonly drawer: DrawerView;
  readonly models: readonly ModelRow[];
  /** The bag that a label asked for. */
  readonly opened: string | null;
}

/** Bags of loose parts: how many, where, at what cost. */
export function BagsSection({ drawer, models, opened }: BagsSectionProps) {
  const isLost = opened !== null && !drawer.bags.some(({ id }) => id === opened);
  return (
    <Section id="bags" title="Bags of parts">
      {isLost && (
        <p role="alert" className="trouble">
          There is no bag of that label on this bench. Look for it by its name, or print its label again.
        </p>
      )}
      {drawer.bags.length === 0 && <p className="muted">No bag yet.</p>}
      <div>
        {drawer.bags.map((bag) => (
          <BagFold key={bag.id} bag={bag} isOpen={bag.id === opened} cost={(minor) => money(minor, drawer.currency)} />
        ))}
        <Fold title="Add a bag that was bought">
          <AddBagForm currency={drawer.currency} models={models} />
        </Fold>
      </div>
    </Section>
  );
}
