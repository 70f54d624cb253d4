import { useState } from 'react';
import { counted } from '../format/number.ts';
import { outbox, useDelivery, useOutbox } from './outbox-here.ts';

/** Says what this device has noted and not yet delivered, and what the bench did not take; nothing while there is neither. */
export function OutboxBadge() {
  useDelivery();
  const { waiting, refused } = useOutbox();
  const [open, setOpen] = useState(false);
  if (waiting.length + refused.length === 0) return null;
  return (
    <div className="outbox">
      <button type="button" className="main outbox-badge" aria-expanded={open} onClick={() => setOpen(!open)}>
        {waiting.length > 0 ? `${waiting.length} not delivered` : `${refused.length} not taken`}
      </button>
      {open && (
        <section className="outbox-list sheet" aria-label="Not delivered yet">
          {waiting.length > 0 && (
            <p>{counted(waiting.length, 'thing is', 'things are')} kept on this device, and delivered in order when the bench answers.</p>
          )}
          <ul className="plain-list">
            {waiting.map(({ id, said }) => (
              <li key={id}>{said}</li>
            ))}
            {refused.map(({ id, said, refusal }) => (
              <li key={id}>
                <strong>{said}</strong>: {refusal}{' '}
                <button type="button" onClick={() => void outbox.putAway(id)} aria-label={`Put away: ${said}`}>
                  Put away
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
