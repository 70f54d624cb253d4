import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';

/** Asks the open questions anew soon after the log of the bench has grown, from whichever device. */
export function useChanges(): void {
  const client = useQueryClient();
  useEffect(() => {
    const source = new EventSource('/api/changes');
    let timer: ReturnType<typeof setTimeout> | undefined;
    source.addEventListener('seq', () => {
      clearTimeout(timer);
      timer = setTimeout(() => void client.invalidateQueries(), 120);
    });
    return () => {
      clearTimeout(timer);
      source.close();
    };
  }, [client]);
}
