import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { ClaimForm } from './claim-form.tsx';
import { AnyLookForm } from './any-look-form.tsx';
import { AnyMeasureForm } from './any-measure-form.tsx';
import { AnyRemedyForm } from './any-remedy-form.tsx';
import { AnyTryForm } from './any-try-form.tsx';
import { OpenForm } from './open-form.tsx';
import { useUnit } from './unit-context.ts';

/** What was done without being advised goes on record here. */
export function OtherSection() {
  const { file, model } = useUnit();
  if (file.row.kind !== 'unit') return null;
  return (
    <Section id="other" title="Note something you did">
      <div>
        <Fold title="Tried a function">
          <AnyTryForm />
        </Fold>
        <Fold title="Saw something">
          <AnyLookForm />
        </Fold>
        {model.points.length > 0 && (
          <Fold title="Measured a point">
            <AnyMeasureForm />
          </Fold>
        )}
        <Fold title="Did some work">
          <AnyRemedyForm />
        </Fold>
        <Fold title="Opened or closed it">
          <OpenForm />
        </Fold>
        <Fold title="The seller says more">
          <ClaimForm />
        </Fold>
      </div>
    </Section>
  );
}
