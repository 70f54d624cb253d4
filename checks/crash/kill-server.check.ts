import { expect, it } from 'vitest';
import { killRounds } from './kill-rounds.ts';
import { mixedRounds } from './mixed-rounds.ts';

it('loses no acknowledged event when the server is killed in the middle of a stream from two clients', async () => {
  const result = await killRounds(4, 'kill the server', 1000);
  expect(result).toEqual({ rounds: 4, acknowledged: 1000, lost: 0, doubled: 0, missing: 0, database: 'ok' });
});

it('loses no acknowledged event and no photo when it is killed at random moments of random work, and leaves no half file', async () => {
  const result = await mixedRounds(5, 'random work');
  expect(result).toMatchObject({ rounds: 5, lostEvents: 0, lostPhotos: 0, doubled: 0, halfFiles: 0, database: 'ok' });
  expect(result.events).toBeGreaterThan(30);
  expect(result.photos).toBeGreaterThan(1);
});
