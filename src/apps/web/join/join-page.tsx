import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { joinBench } from '../api/devices.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { deviceName, nameDevice } from '../record/device.ts';
import { Field } from '../ui/field.tsx';
import { useTitle } from '../ui/use-title.ts';

/** Where the scanned code leads: this device says its name, and is let in. */
export default function JoinPage() {
  const client = useQueryClient();
  const [, go] = useLocation();
  const [secret] = useState(() => location.hash.slice(1));
  const [name, setName] = useState(deviceName);
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  useTitle('Join the bench');
  const join = async (): Promise<void> => {
    setBusy(true);
    try {
      await joinBench(secret, name);
      nameDevice(name);
      await client.invalidateQueries();
      go('/', { replace: true });
    } catch (error) {
      setTrouble(sentenceOf(error));
      setBusy(false);
    }
  };
  return (
    <main id="main" className="join">
      <h1>Join the bench</h1>
      {secret === '' ? (
        <p>
          There is no invitation in this address. On the machine of the bench open Settings, Devices, let a device join, and scan the code
          that it shows.
        </p>
      ) : (
        <form
          className="form sheet"
          onSubmit={(event) => {
            event.preventDefault();
            void join();
          }}
        >
          <Field label="Name of this device" hint="Letters, digits, dots and dashes. It stands in the log beside what you note here">
            <input
              value={name}
              required
              maxLength={64}
              pattern="[A-Za-z0-9][A-Za-z0-9_.\-]*"
              onChange={(event) => setName(event.target.value)}
            />
          </Field>
          {trouble !== null && <p role="alert">{trouble}</p>}
          <button type="submit" className="main" disabled={busy}>
            Join
          </button>
        </form>
      )}
    </main>
  );
}
