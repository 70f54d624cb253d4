import { killRounds, type KillResult } from '../crash/kill-rounds.ts';

/** Acknowledged events that are gone after so many servers were killed in the middle of a stream of 1,000 from two clients. */
export const lostEvents = (rounds: number): Promise<KillResult> => killRounds(rounds, 'figures of the path');
