import { ScrapForm } from './scrap-form.tsx';
import { SaleForm } from './sale-form.tsx';
import { SlotList } from './slot-list.tsx';
import { Fold } from '../ui/fold.tsx';

/** Its parts are worth more elsewhere: take them out one by one, sell it as it is, or scrap what is left. */
export function NextPartOut() {
  return (
    <div className="form">
      <SlotList onlyFull />
      <Fold title="Sell it for parts as it is">
        <SaleForm as="for-parts" />
      </Fold>
      <Fold title="Scrap what is left">
        <ScrapForm />
      </Fold>
    </div>
  );
}
