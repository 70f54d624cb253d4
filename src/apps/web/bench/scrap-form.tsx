import { scrapItem } from '../actions/scrap-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { ReasonForm } from '../ui/reason-form.tsx';
import { useUnit } from './unit-context.ts';

const HINT = 'Cells, screens and boards do not belong in the bin: follow your local rules';

/** Thrown away; its cost is written off. */
export function ScrapForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  return (
    <ReasonForm
      label="Why"
      hint={HINT}
      action="Scrap it"
      required
      busy={busy}
      done={(reason) => void record(scrapItem(file.row.id, reason))}
    />
  );
}
