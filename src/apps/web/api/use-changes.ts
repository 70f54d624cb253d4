import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import type { BenchView } from '../../../bench/views/index.ts';
import { isNews, sawUpTo } from './seen-seq.ts';

const GATHER_MS = 120;

/** Asks the open questions anew soon after the log of the bench has grown, from whichever device; not for what this page wrote itself. */
export function useChanges(): void {
  const client = useQueryClient();
  useEffect(() => {
    const source = new EventSource('/api/changes');
    let timer: ReturnType<typeof setTimeout> | undefined;
    source.addEventListener('seq', (event: MessageEvent<string>) => {
      sawUpTo(client.getQueryData<BenchView>(['bench'])?.events ?? 0);
      if (!isNews(Number(event.data))) return;
      clearTimeout(timer);
      timer = setTimeout(() => void client.invalidateQueries(), GATHER_MS);
    });
    return () => {
      clearTimeout(timer);
      source.close();
    };
  }, [client]);
}
