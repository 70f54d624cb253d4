import { Link } from 'wouter';
import { takeOut } from '../actions/take-out.ts';
import type { ItemFile } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Cautions } from '../ui/cautions.tsx';
import { Fold } from '../ui/fold.tsx';
import { MinutesField } from './minutes-field.tsx';
import { PutInForm } from './put-in-form.tsx';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

type Slot = ItemFile['slots'][number];

/** Each slot with what is in it, to be taken out or filled. */
export function SlotList({ onlyFull = false }: { readonly onlyFull?: boolean }) {
  const { file } = useUnit();
  const slots = file.slots.filter((slot) => !onlyFull || slot.holds !== 'nothing');
  if (slots.length === 0) return <p>Nothing is left in it.</p>;
  return (
    <div>
      {slots.map((slot) => (
        <Fold
          key={slot.slot}
          title={
            <>
              {slot.name} <span className="muted small">{holdsWords(slot)}</span>
            </>
          }
        >
          <div className="form">
            {slot.item_id !== null && (
              <p>
                <Link href={`/bench/${encodeURIComponent(slot.item_id)}`}>{slot.item_name}</Link>
              </p>
            )}
            {slot.holds === 'nothing' ? <PutInForm slot={slot} /> : <TakeOutForm slot={slot} />}
          </div>
        </Fold>
      ))}
    </div>
  );
}

function holdsWords(slot: Slot): string {
  if (slot.holds === 'nothing') return 'empty';
  return slot.holds === 'its-own' ? 'its own' : slot.item_name;
}

function TakeOutForm({ slot }: { readonly slot: Slot }) {
  const { file, model } = useUnit();
  const { record, busy } = useRecorder();
  const spec = model.slots.find((each) => each.id === slot.slot);
  const [minutes, setMinutes] = useMinutes(spec?.minutes ?? 0);
  const done = (): void => void record(takeOut({ unit: file, slot: slot.slot, slotName: slot.name, minutes, newId: () => newId('part') }));
  return (
    <>
      {spec && (
        <>
          <p className="small muted">A working one alone is worth about {money(spec.value, model.currency)}.</p>
          <Cautions cautions={spec.cautions} />
        </>
      )}
      <MinutesField value={minutes} onChange={setMinutes} />
      <button type="button" disabled={busy} onClick={done}>
        Out to the drawer
      </button>
    </>
  );
}
