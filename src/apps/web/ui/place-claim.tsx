import { useState } from 'react';
import type { FindingKind } from '../../../bench/events/index.ts';
import { FINDING_WORDS } from '../format/words.ts';
import { Pick } from './pick.tsx';

interface PlaceClaimProps {
  readonly blocks: readonly { readonly id: string; readonly name: string }[];
  readonly kinds: readonly FindingKind[];
  readonly add: (place: string, sees: FindingKind) => void;
}

/** "Battery cover: missing": what is said of one place. */
export function PlaceClaim({ blocks, kinds, add }: PlaceClaimProps) {
  const [place, setPlace] = useState(blocks[0]?.id ?? '');
  const [sees, setSees] = useState<FindingKind>('missing');
  const known = blocks.some((block) => block.id === place) ? place : (blocks[0]?.id ?? '');
  return (
    <div className="place-claim">
      <Pick label="A place" options={blocks} value={known} onChange={setPlace} />
      <Pick
        label="is"
        options={kinds.map((id) => ({ id, name: FINDING_WORDS[id].toLowerCase() }))}
        value={sees}
        onChange={(id) => setSees(id as FindingKind)}
      />
      <button type="button" onClick={() => add(known, sees)}>
        Add
      </button>
    </div>
  );
}
