import { v7 } from 'uuid';
import type { Clock } from '../bench/ports.ts';

/**
 * The clock of the machine. Ids are UUID version 7 (RFC 9562, §6.2 monotonic counter): each sorts after the one made before it in this
 * process, also within a millisecond and when the clock is set back.
 */
export const systemClock = (): Clock => ({ now: () => new Date(), newId: () => v7() });
