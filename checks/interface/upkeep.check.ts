import { afterAll, beforeAll, expect, it } from 'vitest';
import { openApp, type OpenedApp } from './open-app.ts';

let opened: OpenedApp;
beforeAll(async () => {
  opened = await openApp();
});
afterAll(() => opened.close());

it('the owner sees what was slow by the pattern of its address, and nothing of what was asked', async () => {
  await opened.ask('/api/items/somebodys-blue-player');
  const upkeep = (await (await opened.ask('/api/upkeep')).json()) as { slow_answers: { route: string; seconds: number }[]; jobs: unknown };
  expect(upkeep.slow_answers.map(({ route }) => route)).toContain('GET /api/items/:item');
  expect(upkeep.slow_answers.every(({ seconds }) => seconds > 0)).toBe(true);
  expect(upkeep.jobs).toEqual({ waiting: 0, slow: [], failed: [] });
  expect(JSON.stringify(upkeep)).not.toContain('blue');
});

it('the measures count jobs and errors', async () => {
  const text = await (await opened.ask('/metrics')).text();
  for (const name of ['salvor_jobs_waiting', 'salvor_jobs_failed', 'salvor_errors']) expect(text).toContain(`\n${name} 0\n`);
});
