import { useQueryClient, type QueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { askAnew, askOfBoards } from './ask-anew.ts';
import { benchQuery } from './queries.ts';
import { isNews, isWriting, sawUpTo } from './seen-seq.ts';

const GATHER_MS = 120;
/** More of a circuit is known: that is no hurry. */
const LEARNING_MS = 1000;

/** Asks the open questions anew soon after the log of the bench has grown or more of a circuit is known, from whichever device; not for what this page wrote itself. */
export function useChanges(): void {
  const client = useQueryClient();
  useEffect(() => {
    const source = new EventSource('/api/changes');
    let timer: ReturnType<typeof setTimeout> | undefined;
    let slow: ReturnType<typeof setTimeout> | undefined;
    let heard = 0;
    const gather = (): void => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        if (isWriting()) gather();
        else if (isNews(heard)) void askAnew(client);
      }, GATHER_MS);
    };
    const hear = async (seq: number): Promise<void> => {
      sawUpTo(await eventsShown(client));
      heard = Math.max(heard, seq);
      gather();
    };
    const learn = (): void => {
      slow ??= setTimeout(() => {
        slow = undefined;
        if (isAnswerBegun()) learn();
        else void askOfBoards(client);
      }, LEARNING_MS);
    };
    source.addEventListener('boards', learn);
    source.addEventListener('seq', (event: MessageEvent<string>) => void hear(Number(event.data)));
    return () => {
      clearTimeout(timer);
      clearTimeout(slow);
      source.close();
    };
  }, [client]);
}

/** Whether the card of what to do next holds something that was typed and not sent: a new advice would wipe it away. */
const isAnswerBegun = (): boolean =>
  [...document.querySelectorAll<HTMLInputElement>('#what-next input.meter')].some(({ value }) => value !== '');

/** How long the log was when this page first asked; the stream tells its length at once, and that is no news. */
const eventsShown = async (client: QueryClient): Promise<number> =>
  (await client.ensureQueryData(benchQuery).catch(() => null))?.events ?? 0;
