import { useEffect, useState } from 'react';

/** Whether the element of this id is scrolled out of the window. */
export function useOutOfSight(id: string): boolean {
  const [isOut, setOut] = useState(false);
  useEffect(() => {
    const element = document.getElementById(id);
    if (element === null) return undefined;
    const watcher = new IntersectionObserver(([entry]) => setOut(entry?.isIntersecting === false));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [id]);
  return isOut;
}
