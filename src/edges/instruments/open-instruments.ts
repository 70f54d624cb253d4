import type { InstrumentAnswer, InstrumentQuantity, Instruments } from '../../bench/ports.ts';
import { LineError, LineSocket } from './line-socket.ts';
import { addressOf } from './address.ts';

export interface InstrumentLimits {
  readonly connectMs: number;
  readonly answerMs: number;
}

/** A meter may take seconds for a reading with a slow range; a person at the bench does not wait longer. */
const USUAL: InstrumentLimits = { connectMs: 3_000, answerMs: 6_000 };

/** SCPI-1999, volume 2, MEASure; diode mode is not in it, and named as most meters do (common practice, no source). */
const ASKED: Readonly<Record<InstrumentQuantity, { readonly command: string; readonly unit: 'V' | 'A' | 'Ω' }>> = {
  volts: { command: 'MEAS:VOLT:DC?', unit: 'V' },
  amps: { command: 'MEAS:CURR:DC?', unit: 'A' },
  ohms: { command: 'MEAS:RES?', unit: 'Ω' },
  diode: { command: 'MEAS:DIOD?', unit: 'V' },
};

/** SCPI-1999, volume 1, 7.2.1.4: numbers from here on stand for infinity; "not a number" is 9.91E37. */
const INFINITE = 9.9e37;
const NOT_A_NUMBER = 9.91e37;

/**
 * Reads instruments that speak SCPI over TCP. Each reading is a connection of its own: identification (*IDN?, IEEE 488.2,
 * 10.14), one measurement, and the error queue where that gave no number. Nothing is reset and no output is switched.
 */
export function openInstruments(limits: InstrumentLimits = USUAL): Instruments {
  return {
    read: async (address, quantity) => {
      const to = addressOf(address);
      if (!to) return refused('bad-address', `"${address}" is no address such as 192.0.2.7 or meter.local:5025`);
      let line: LineSocket | undefined;
      try {
        line = await LineSocket.open(to.host, to.port, limits.connectMs);
        return await readOver(line, quantity, limits.answerMs);
      } catch (error) {
        if (error instanceof LineError) return refused(error.code, error.message);
        throw error;
      } finally {
        line?.close();
      }
    },
  };
}

const refused = (code: Extract<InstrumentAnswer, { ok: false }>['code'], detail: string): InstrumentAnswer => ({ ok: false, code, detail });

async function readOver(line: LineSocket, quantity: InstrumentQuantity, withinMs: number): Promise<InstrumentAnswer> {
  const instrument = await line.ask('*IDN?', withinMs);
  // Maker, type, serial number and firmware, with commas between.
  if (instrument.split(',').length !== 4) return refused('not-an-instrument', `it says "${instrument.slice(0, 80)}" of itself`);
  const { command, unit } = ASKED[quantity];
  const answer = await line.ask(command, withinMs);
  const value = Number(answer.split(',')[0]);
  if (answer === '' || !Number.isFinite(value)) return faultOf(line, answer, withinMs);
  if (Math.abs(value) === NOT_A_NUMBER) return refused('not-a-number', `it has no reading for ${command}`);
  return { ok: true, value: Math.abs(value) >= INFINITE ? null : value, unit, instrument };
}

/** What the instrument's error queue says of an answer that is no number; "0" is no error. */
async function faultOf(line: LineSocket, answer: string, withinMs: number): Promise<InstrumentAnswer> {
  const error = await line.ask('SYST:ERR?', withinMs);
  if (/^[+-]?0+\b/.test(error)) return refused('not-a-number', `it answered "${answer.slice(0, 80)}"`);
  return refused('instrument-error', error.slice(0, 200));
}
