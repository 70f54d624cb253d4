import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { GradeForm } from './grade-form.tsx';
import { ListingText } from '../selling/listing-text.tsx';
import { KeepForm } from './keep-form.tsx';
import { ListForm } from './list-form.tsx';
import { ReportLinks } from './report-links.tsx';
import { ReturnForm } from './return-form.tsx';
import { SaleForm } from './sale-form.tsx';
import { ScrapForm } from './scrap-form.tsx';
import { useUnit } from './unit-context.ts';

const GONE: readonly string[] = ['sold', 'scrapped', 'kept'];

/** Every way in which the thing leaves the bench, and comes back. */
export function LeavingSection() {
  const { file } = useUnit();
  const { status } = file.row;
  const gone = GONE.includes(status);
  const grade = file.grade?.grade;
  return (
    <Section
      id="leaving"
      title="Grade and let go"
      aside={grade === undefined ? undefined : grade === 'parts' ? 'For parts' : `Grade ${grade}`}
    >
      <div>
        {file.row.kind === 'unit' && (
          <Fold title="Condition report and story">
            <ReportLinks />
          </Fold>
        )}
        {!gone && (
          <>
            <Fold title="Grade">
              <GradeForm />
            </Fold>
            {file.row.kind === 'unit' && (
              <Fold title="Text, photos and post for a listing">
                <ListingText itemId={file.row.id} />
              </Fold>
            )}
            <Fold title="List it for sale">
              <ListForm />
            </Fold>
            <Fold title="Sell">
              <SaleForm key={status} as={status === 'proved' || status === 'listed' ? 'working' : 'for-parts'} />
            </Fold>
            <Fold title="Keep">
              <KeepForm />
            </Fold>
            <Fold title="Scrap">
              <ScrapForm />
            </Fold>
          </>
        )}
        {status === 'sold' && (
          <Fold title="It came back from the buyer">
            <ReturnForm />
          </Fold>
        )}
        {gone && status !== 'sold' && <p className="muted">It has left the bench. To take that back, undo it in the log.</p>}
      </div>
    </Section>
  );
}
