import { KeepForm } from './keep-form.tsx';
import { NextUnit } from './next-unit.tsx';
import { SaleForm } from './sale-form.tsx';
import { ScrapForm } from './scrap-form.tsx';
import { Fold } from '../ui/fold.tsx';

/** Not worth more work now: go on with another unit, or let this one go. */
export function NextLeave() {
  return (
    <div className="form">
      <NextUnit />
      <Fold title="Sell it for parts as it is">
        <SaleForm as="for-parts" />
      </Fold>
      <Fold title="Keep it">
        <KeepForm />
      </Fold>
      <Fold title="Scrap it">
        <ScrapForm />
      </Fold>
    </div>
  );
}
