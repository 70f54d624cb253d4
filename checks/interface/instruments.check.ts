import { afterAll, beforeAll, expect, it } from 'vitest';
import { Problem } from '../../src/bench/views/index.ts';
import { openApp, type OpenedApp } from './open-app.ts';
import { simulatedMeter } from './simulated-meter.ts';

let opened: OpenedApp;
beforeAll(async () => void (opened = await openApp()));
afterAll(() => opened.close());
const read = (address: string, mode = 'volts') => opened.ask('/api/instruments/reading', { address, mode });

it('a meter on the network gives a reading with its unit and its own name, and OL as null', async () => {
  const meter = await simulatedMeter('+3.70512000E+00');
  const over = await simulatedMeter('9.9E37');
  expect(await (await read(meter.address)).json()).toEqual({
    value: 3.70512,
    unit: 'V',
    instrument: 'Invented Bench Works,BM-3,0042,1.07',
  });
  expect(await (await read(over.address, 'ohms')).json()).toMatchObject({ value: null, unit: 'Ω' });
  await meter.close();
  await over.close();
});

it('one that does not answer is told with what to do, and nothing is looked for at what is no address', async () => {
  const meter = await simulatedMeter('1');
  await meter.close();
  const gone = await read(meter.address);
  expect([gone.status, Problem.parse(await gone.json())]).toMatchObject([
    502,
    { code: 'no-reading', where: meter.address, message: expect.stringMatching(/same network/) },
  ]);
  const bad = await read('http://meter');
  expect([bad.status, Problem.parse(await bad.json()).message]).toEqual([400, expect.stringContaining('192.0.2.7')]);
  expect((await read('192.0.2.7', 'watts')).status).toBe(400);
});
