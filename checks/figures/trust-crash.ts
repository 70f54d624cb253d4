import { mixedRounds } from '../crash/mixed-rounds.ts';
import type { Figure, Progress } from './figure.ts';

const ROUNDS = 200;

/** What was acknowledged and is gone after servers were killed at random moments of random work. */
export async function crashFigures(progress: Progress): Promise<Figure[]> {
  progress(`Killing ${ROUNDS} servers in the middle of their work …`);
  const { rounds, events, photos, lostEvents, lostPhotos, doubled, halfFiles, database } = await mixedRounds(ROUNDS, 'figures of trust');
  const damage = `${doubled} events doubled, ${halfFiles} rounds with a half file, check of the database "${database}"`;
  return [
    {
      figure: 'trust.lost_events',
      value: lostEvents,
      unit: '',
      target: '= 0',
      reference: `of ${events} acknowledged events over ${rounds} rounds of kill -9 at random moments, each followed by a restart on the same folder; ${damage}`,
    },
    {
      figure: 'trust.lost_photos',
      value: lostPhotos,
      unit: '',
      target: '= 0',
      reference: `of ${photos} acknowledged photos in the same rounds; each must come back with its hash, and its two smaller sizes must decode`,
    },
  ];
}
