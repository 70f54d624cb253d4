import { useEffect, useRef, useState } from 'react';
import type { DrawerView } from '../../../bench/views/index.ts';
import { setBag } from '../actions/set-bag.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { UseBagForm } from './use-bag-form.tsx';

type Bag = DrawerView['bags'][number];

interface BagFoldProps {
  readonly bag: Bag;
  readonly isOpen: boolean;
  readonly cost: (minor: number) => string;
}

/** One bag: what it holds and at what cost, where it lies, what its parts look like, and taking from it. */
export function BagFold({ bag, isOpen, cost }: BagFoldProps) {
  const line = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isOpen) line.current?.scrollIntoView({ block: 'start' });
  }, [isOpen]);
  return (
    <div ref={line}>
      <Fold
        open={isOpen}
        title={
          <>
            {bag.count} × {bag.name}{' '}
            <span className="small muted">
              {bag.place !== '' && `${bag.place} · `}
              {cost(bag.cost_minor)}
            </span>{' '}
            {bag.low && <span className="low">running low</span>}
          </>
        }
      >
        <div className="form">
          <Layers bag={bag} cost={cost} />
          <Terminals bag={bag} />
          <UseBagForm bag={bag} />
          <PlaceForm bag={bag} />
          <p>
            <a href={`/api/labels?bags=${encodeURIComponent(bag.id)}`} target="_blank" rel="noreferrer">
              Label for this bag (PDF)
            </a>
          </p>
        </div>
      </Fold>
    </div>
  );
}

function Layers({ bag, cost }: Pick<BagFoldProps, 'bag' | 'cost'>) {
  if (bag.layers.length < 2) return null;
  const layers = bag.layers.map(({ count, cost_minor: minor }) => `${count} for ${cost(minor)}`);
  return <p className="small">Bought one after another, the first leave first: {layers.join(', then ')}.</p>;
}

function Terminals({ bag }: { readonly bag: Bag }) {
  const { record, busy } = useRecorder();
  if (bag.pattern === null)
    return (
      <p className="small muted">Its terminals are not on file. Lay one over a place under “Does it fit?”, and keep them with the bag.</p>
    );
  return (
    <p className="row small">
      <span>
        Terminals on file: {bag.pattern.name}, {bag.pattern.pads.length} of them.
      </span>
      <button type="button" disabled={busy} onClick={() => void record(setBag(bag.id, bag.name, { pattern: null }))}>
        Forget them
      </button>
    </p>
  );
}

function PlaceForm({ bag }: { readonly bag: Bag }) {
  const { record, busy } = useRecorder();
  const [place, setPlace] = useState(bag.place);
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(setBag(bag.id, bag.name, { place }));
      }}
    >
      <Field label="Where it lies">
        <input value={place} maxLength={200} onChange={(event) => setPlace(event.target.value)} />
      </Field>
      <button type="submit" disabled={busy}>
        It lies here now
      </button>
    </form>
  );
}
