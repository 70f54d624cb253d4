import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { itemQuery } from '../api/queries.ts';
import type { ItemFile } from '../../../bench/views/index.ts';

const ASKED_EVERY_MS = 2000;

/** While the circuit of the unit is being computed, asks anew now and then; not while something is typed that a new advice would wipe away. */
export function useSharper({ row, model, belief }: ItemFile): void {
  const client = useQueryClient();
  const { id, kind } = row;
  const isGrowing = kind === 'unit' && model.level >= 2 && (belief.knowledge === null || belief.knowledge.done < belief.knowledge.rows);
  useEffect(() => {
    if (!isGrowing) return undefined;
    const timer = setInterval(() => {
      if (!isTyping()) void client.invalidateQueries({ queryKey: itemQuery(id).queryKey });
    }, ASKED_EVERY_MS);
    return () => clearInterval(timer);
  }, [client, id, isGrowing]);
}

/** Whether the card of what to do next holds something that was typed and not sent. */
const isTyping = (): boolean =>
  [...document.querySelectorAll<HTMLInputElement>('#what-next input[type="text"], #what-next input:not([type])')].some(
    ({ value }) => value !== '',
  );
