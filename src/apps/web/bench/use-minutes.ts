import { useState } from 'react';
import { useClock } from './clock-store.ts';
import { useUnit } from './unit-context.ts';

/** Minutes that a gesture takes: as usual for it, unless changed; none while the clock of this unit counts them. */
export function useMinutes(usual: number): readonly [number, (minutes: number) => void] {
  const { file } = useUnit();
  const clock = useClock();
  const [typed, setTyped] = useState<number | null>(null);
  const byClock = clock?.itemId === file.row.id;
  return [typed ?? (byClock ? 0 : Math.round(usual * 10) / 10), setTyped];
}
