import { createServer, type Server, type Socket } from 'node:net';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { openInstruments } from './open-instruments.ts';

const IDENTITY = 'Invented Bench Works,BM-3,0042,1.07';
const servers: Server[] = [];
afterEach(async () => {
  await Promise.all(servers.splice(0).map((server) => new Promise((resolve) => server.close(resolve))));
});

/** A simulated instrument on the loopback: `answer` gives what it sends for each line that it is sent, undefined for silence. */
async function instrument(answer: (question: string, socket: Socket) => string | undefined): Promise<string> {
  const server = createServer((socket) => {
    let held = '';
    socket.on('error', () => socket.destroy());
    socket.on('data', (bytes) => {
      held += bytes.toString();
      for (let end = held.indexOf('\n'); end >= 0; end = held.indexOf('\n')) {
        const reply = answer(held.slice(0, end), socket);
        held = held.slice(end + 1);
        if (reply !== undefined) socket.write(reply);
      }
    });
  });
  servers.push(server);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return `127.0.0.1:${(server.address() as AddressInfo).port}`;
}

const meter = (measured: string, error = '0,"No error"') =>
  instrument((question) => `${question === '*IDN?' ? IDENTITY : question === 'SYST:ERR?' ? error : measured}\r\n`);

const instruments = openInstruments({ connectMs: 1_000, answerMs: 150 });

describe('an instrument on the network', () => {
  it('gives a reading with its unit and its own name', async () => {
    const asked: string[] = [];
    const address = await instrument((question) => {
      asked.push(question);
      return `${question === '*IDN?' ? IDENTITY : '+3.70512000E+00'}\n`;
    });
    expect(await instruments.read(address, 'volts')).toEqual({ ok: true, value: 3.70512, unit: 'V', instrument: IDENTITY });
    expect(asked).toEqual(['*IDN?', 'MEAS:VOLT:DC?']);
  });

  it.each([
    ['ohms', 'MEAS:RES?', 'Ω'],
    ['amps', 'MEAS:CURR:DC?', 'A'],
    ['diode', 'MEAS:DIOD?', 'V'],
  ] as const)('is asked for %s in its own words', async (quantity, command, unit) => {
    const address = await instrument((question) => `${question === '*IDN?' ? IDENTITY : question === command ? '0.5' : 'x'}\n`);
    expect(await instruments.read(address, quantity)).toMatchObject({ ok: true, value: 0.5, unit });
  });

  it('that shows overload gives null, as OL does', async () => {
    expect(await instruments.read(await meter('9.90000000E+37'), 'ohms')).toMatchObject({ ok: true, value: null });
    expect(await instruments.read(await meter('-9.9E37'), 'ohms')).toMatchObject({ ok: true, value: null });
    expect(await instruments.read(await meter('9.91E37'), 'ohms')).toMatchObject({ ok: false, code: 'not-a-number' });
  });

  it('may send its answer in pieces', async () => {
    const address = await instrument((question, socket) => {
      if (question === '*IDN?') return `${IDENTITY}\n`;
      setTimeout(() => socket.write('1.2'), 10);
      setTimeout(() => socket.write('5\n'), 30);
      return undefined;
    });
    expect(await instruments.read(address, 'volts')).toMatchObject({ ok: true, value: 1.25 });
  });

  it('is quoted when it refuses the question', async () => {
    const found = await instruments.read(await meter('', '-113,"Undefined header"'), 'diode');
    expect(found).toEqual({ ok: false, code: 'instrument-error', detail: '-113,"Undefined header"' });
  });

  it('that answers without a number, and without an error, is no help', async () => {
    expect(await instruments.read(await meter('READY'), 'volts')).toMatchObject({ ok: false, code: 'not-a-number' });
  });

  it('is not taken for one when it does not name itself in four fields', async () => {
    expect(await instruments.read(await instrument(() => 'HTTP/1.1 400 Bad Request\r\n'), 'volts')).toMatchObject({
      ok: false,
      code: 'not-an-instrument',
    });
  });

  it('that keeps silent is given up in time, at its name and at its reading', async () => {
    expect(await instruments.read(await instrument(() => undefined), 'volts')).toMatchObject({ ok: false, code: 'timed-out' });
    const mute = await instrument((question) => (question === '*IDN?' ? `${IDENTITY}\n` : undefined));
    expect(await instruments.read(mute, 'volts')).toMatchObject({ ok: false, code: 'timed-out' });
  });

  it('that hangs up is told', async () => {
    const address = await instrument((_, socket) => void socket.destroy());
    expect(await instruments.read(address, 'volts')).toMatchObject({ ok: false, code: 'closed' });
  });

  it('that never ends its line is cut off', async () => {
    expect(await instruments.read(await instrument(() => 'x'.repeat(5_000)), 'volts')).toMatchObject({
      ok: false,
      code: 'answer-too-long',
    });
  });

  it('that is not there is told', async () => {
    const address = await meter('1');
    await Promise.all(servers.splice(0).map((server) => new Promise((resolve) => server.close(resolve))));
    expect(await instruments.read(address, 'volts')).toMatchObject({ ok: false, code: 'not-reached' });
  });

  it.each(['', 'a b', 'host:0', 'host:70000', 'http://host', '-x', '::1'])('is not looked for at "%s"', async (address) => {
    expect(await instruments.read(address, 'volts')).toMatchObject({ ok: false, code: 'bad-address' });
  });
});
