import { useEffect, useSyncExternalStore } from 'react';
import { useQueryClient } from '@tanstack/react-query';
import { askAnew } from '../api/ask-anew.ts';
import { idbParcels } from './idb-parcels.ts';
import { createOutbox, type OutboxState } from './outbox.ts';
import { sendContent } from './send-content.ts';

/** The outbox of this browser; its pages share what it keeps, and take turns in delivering. */
export const outbox = createOutbox(idbParcels(), sendContent);

const AGAIN_MS = 5000;

export const useOutbox = (): OutboxState => useSyncExternalStore(outbox.watch, outbox.state);

/** One page at a time delivers, where the browser can hold the others back. */
const deliverInTurn = async (): Promise<boolean> =>
  'locks' in navigator ? navigator.locks.request('salvor-outbox', () => outbox.deliver()) : outbox.deliver();

/** Delivers what is kept: at once, when the network comes back, and every few seconds while something waits. */
export function useDelivery(): void {
  const client = useQueryClient();
  const { waiting } = useOutbox();
  const isWaiting = waiting.length > 0;
  useEffect(() => void outbox.load().catch(() => undefined), []);
  useEffect(() => {
    if (!isWaiting) return undefined;
    const deliver = (): void =>
      void deliverInTurn().then(
        (isAll) => (isAll ? askAnew(client) : undefined),
        () => undefined,
      );
    deliver();
    const timer = setInterval(deliver, AGAIN_MS);
    addEventListener('online', deliver);
    return () => {
      clearInterval(timer);
      removeEventListener('online', deliver);
    };
  }, [client, isWaiting]);
}
