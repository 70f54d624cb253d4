import { Field } from '../ui/field.tsx';

/** A log from a file. It stays on this device: only what is noted of it goes to the bench. */
export function LogFile({ label, onText }: { readonly label: string; readonly onText: (text: string) => void }) {
  return (
    <Field label={label} hint="CSV or text from any meter or logger, with the time in a column">
      <input
        type="file"
        accept=".csv,.txt,.tsv,.log,text/csv,text/plain"
        onChange={(event) => void event.target.files?.[0]?.text().then(onText)}
      />
    </Field>
  );
}
