import { expect, it } from 'vitest';
import { killRounds } from './kill-rounds.ts';

it('loses no acknowledged event when the server is killed in the middle of a stream from two clients', async () => {
  const result = await killRounds(4, 'kill the server', 1000);
  expect(result).toEqual({ rounds: 4, acknowledged: 1000, lost: 0, doubled: 0, missing: 0, database: 'ok' });
});
