import { useState } from 'react';
import { deviceName, nameDevice } from '../record/device.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { useLook, type Look } from '../shell/look.ts';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';
import { Section } from '../ui/section.tsx';

const LOOKS: readonly { readonly value: Look; readonly label: string }[] = [
  { value: 'system', label: 'As the system' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
];

/** What holds for this device only: its name in the log, which is fixed for one that has joined, and the look. */
export function DeviceSection({ joinedAs }: { readonly joinedAs: string | null }) {
  const { tell } = useRecorder();
  const [name, setName] = useState(deviceName);
  const [look, choose] = useLook();
  return (
    <Section id="device" title="This device">
      {joinedAs !== null && (
        <p>
          This device joined as <strong>{joinedAs}</strong>, and notes under that name.
        </p>
      )}
      {joinedAs === null && (
        <form
          className="form"
          onSubmit={(event) => {
            event.preventDefault();
            if (nameDevice(name)) tell(`This device is now called ${name}`, 'plain');
            else tell('A device name is letters, digits, dots, dashes and underscores, without spaces. Write it so and save again.', 'bad');
          }}
        >
          <div className="fields">
            <Field label="Name of this device" hint="Stands in the log beside what was noted here">
              <input value={name} required maxLength={64} onChange={(event) => setName(event.target.value)} />
            </Field>
          </div>
          <div className="row">
            <button type="submit">Save the name</button>
          </div>
        </form>
      )}
      <Chips legend="Look" options={LOOKS} value={look} onChange={choose} />
    </Section>
  );
}
