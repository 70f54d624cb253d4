import { keepItem } from '../actions/keep-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { ReasonForm } from '../ui/reason-form.tsx';
import { useUnit } from './unit-context.ts';

/** Kept for oneself; it leaves the stock at its cost. */
export function KeepForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  return <ReasonForm label="What for" action="Keep it" busy={busy} done={(reason) => void record(keepItem(file.row.id, reason))} />;
}
