import { Link } from 'wouter';
import { Fold } from '../ui/fold.tsx';
import { ChargeLogForm } from './charge-log-form.tsx';
import { ColourForm } from './colour-form.tsx';
import { DisplayForm } from './display-form.tsx';
import { HeatLogForm } from './heat-log-form.tsx';
import { SoundForm } from './sound-form.tsx';

/** Everything that can be measured with more than a single reading. */
export default function MeasuredForms() {
  return (
    <div>
      <Fold title="Log of a charge or discharge">
        <ChargeLogForm />
      </Fold>
      <Fold title="Sound check">
        <SoundForm />
      </Fold>
      <Fold title="Display check">
        <DisplayForm />
      </Fold>
      <Fold title="Colour of the shell">
        <ColourForm />
      </Fold>
      <Fold title="Log of heat">
        <HeatLogForm />
      </Fold>
      <p className="small">
        <Link href="/test-picture">Test pictures and keys</Link> on this screen, to look at and to compare with.
      </p>
    </div>
  );
}
