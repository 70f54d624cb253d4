import { useState } from 'react';
import type { Pattern } from '../../../core/fit/index.ts';
import { recordOf } from '../../../bench/fit/index.ts';
import type { DrawerView } from '../../../bench/views/index.ts';
import { setBag } from '../actions/set-bag.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Pick } from '../ui/pick.tsx';

interface KeepTerminalsProps {
  readonly pattern: Pattern;
  readonly bags: DrawerView['bags'];
}

/** Keeps what is known of a part with a bag of the drawer, so that it need not be measured again. */
export function KeepTerminals({ pattern, bags }: KeepTerminalsProps) {
  const { record, busy } = useRecorder();
  const [picked, setPicked] = useState('');
  const bag = bags.find(({ id }) => id === picked) ?? bags[0]!;
  return (
    <form
      className="row keep-terminals"
      onSubmit={(event) => {
        event.preventDefault();
        void record(setBag(bag.id, bag.name, { pattern: recordOf(pattern) }));
      }}
    >
      <Pick
        label="These are the terminals of"
        options={bags.map(({ id, name, place }) => ({ id, name: place === '' ? name : `${name}, ${place}` }))}
        value={bag.id}
        onChange={setPicked}
      />
      <button type="submit" disabled={busy}>
        Keep them with the bag
      </button>
    </form>
  );
}
