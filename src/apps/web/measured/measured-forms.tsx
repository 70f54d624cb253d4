import { Fold } from '../ui/fold.tsx';
import { ChargeLogForm } from './charge-log-form.tsx';
import { HeatLogForm } from './heat-log-form.tsx';

/** Everything that can be measured with more than a single reading. */
export default function MeasuredForms() {
  return (
    <div>
      <Fold title="Log of a charge or discharge">
        <ChargeLogForm />
      </Fold>
      <Fold title="Log of heat">
        <HeatLogForm />
      </Fold>
    </div>
  );
}
