import { describe, expect, it } from 'vitest';
import {
  asWritten,
  CircuitError,
  compileCircuit,
  HANDHELD_METER,
  measure,
  readNetlist,
  type Circuit,
  type MeterRequest,
} from '../index.ts';

function board(text: string): Circuit {
  const read = readNetlist(`t\n${text}`);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return compileCircuit(read.netlist);
}

function reading(circuit: Circuit, request: MeterRequest): number | null {
  const result = measure(circuit, asWritten(circuit.netlist), request);
  if (!result.ok) throw new Error(result.code);
  return result.value;
}

const ohms = (text: string, red = 'a', black = '0') => reading(board(text), { mode: 'ohms', red, black });
const diode = (text: string, red = 'a', black = '0') => reading(board(text), { mode: 'diode', red, black });

describe('volts', () => {
  const divider = board('V1 in 0 5\nR1 in a 1meg\nR2 a 0 1meg\nXBT cell 0 BATTERY v=3.7 r=0.2\nRSW cell sw 0.05\nRL sw 0 100');

  it('are loaded by the 10 MΩ of the meter', () => {
    const value = reading(divider, { mode: 'volts', red: 'a', power: { supplies: { V1: 5 } } });
    expect(value).toBeCloseTo(5 / (1 + 1 + 1 / 10), 2);
  });

  it('between two nodes away from ground are loaded too', () => {
    const value = reading(divider, { mode: 'volts', red: 'in', black: 'a', power: { supplies: { v1: 5 } } });
    expect(value).toBeCloseTo(5 / (1 + 1 + 1 / 10), 2);
  });

  it('follow the supplies and the switches of the power state', () => {
    const at = (supplies: Record<string, number>, switches?: Record<string, 'on' | 'off'>) =>
      reading(divider, { mode: 'volts', red: 'sw', power: { supplies, ...(switches && { switches }) } });
    expect(at({ XBT: 4 })).toBeCloseTo((4 * 100) / 100.25, 4);
    expect(at({ XBT: 4 }, { RSW: 'off' })).toBeCloseTo(0, 6);
    expect(at({ V1: 5 })).toBeCloseTo(0, 6);
  });

  it('keep a switch closed whose resistor is written as open', () => {
    const keyed = board('V1 in 0 5\nR1 in a 10k\nRKEY a b 20meg\nR2 b 0 1k');
    const at = (position: 'on' | 'off') =>
      reading(keyed, { mode: 'volts', red: 'a', power: { supplies: { V1: 5 }, switches: { RKEY: position } } });
    expect(at('on')).toBeCloseTo(5 / 11, 3);
    expect(at('off')).toBeCloseTo(5 / (1 + 10e3 / 10e6), 2);
  });

  it('carry the limit of the range that holds them', () => {
    const result = measure(divider, asWritten(divider.netlist), { mode: 'volts', red: 'in', power: { supplies: { V1: 5 } } });
    expect(result).toMatchObject({ ok: true, mode: 'volts' });
    if (result.ok) expect(result.limit).toBeCloseTo(0.005 * 5 + 2 * 0.001, 6);
  });
});

describe('ohms', () => {
  it.each([
    [0.5, 'R1 a 0 0.5'],
    [4700, 'R1 a 0 4.7k'],
    [470e3, 'R1 a 0 470k'],
    [500, 'R1 a 0 1k\nR2 a b 300\nR3 b 0 700'],
  ])('are %d for %j', (expected, text) => {
    expect(ohms(text)! / expected).toBeCloseTo(1, 2);
  });

  it('are OL where nothing is joined, and past the last range', () => {
    expect(ohms('R1 a 0 200meg')).toBeNull();
    expect(ohms('R1 b 0 1k\nC1 a b 1u')).toBeNull();
  });

  it('leave the supplies out, whatever the netlist says of them', () => {
    expect(ohms('V1 a 0 5\nXBT b 0 BATTERY v=3 r=0.1\nR1 a b 1k\nR2 b 0 1k')).toBeCloseTo(2000, -1);
  });

  it('see a junction conduct at low currents, so that they depend on which lead is where', () => {
    const text = 'D1 a 0 DS\nR1 a 0 10meg\n.model DS D(IS=1e-10 N=1.8)';
    expect(ohms(text)).toBeLessThan(9e6);
    expect(ohms(text, '0', 'a')! / 10e6).toBeGreaterThan(0.85);
  });

  it('are the same between two nodes away from ground, whichever way round in a straight circuit', () => {
    const text = 'R1 a b 1k\nR2 b c 2k\nR3 c 0 3k\nR4 a 0 4k';
    expect(ohms(text, 'a', 'c')).toBeCloseTo((3000 * 7000) / 10_000, 0);
    expect(ohms(text, 'c', 'a')).toBeCloseTo(2100, 0);
  });
});

describe('diode mode', () => {
  const SILICON = '.model DS D(IS=2.5e-9 N=1.8 RS=0.6)';

  it('shows the drop at the test current: N·Vt·ln(I/IS) and the drop in RS', () => {
    const vt = 300.15 * (1.380649e-23 / 1.602176634e-19);
    expect(diode(`D1 a 0 DS\n${SILICON}`)).toBeCloseTo(1.8 * vt * Math.log(1e-3 / 2.5e-9) + 0.6e-3, 3);
  });

  it('shows OL backwards, and where junctions in series need more than its compliance', () => {
    expect(diode(`D1 a 0 DS\nR1 a 0 100meg\n${SILICON}`, '0', 'a')).toBeNull();
    expect(diode(`D1 a b DS\nD2 b c DS\nD3 c d DS\nD4 d e DS\nD5 e 0 DS\n${SILICON}`)).toBeNull();
    expect(diode(`D1 a b DS\nD2 b 0 DS\n${SILICON}`)).toBeGreaterThan(1);
  });

  it('shows the drop of a resistor as a voltage', () => {
    expect(diode('R1 a 0 680')).toBeCloseTo(0.68, 3);
  });
});

describe('continuity', () => {
  const sounds = (ohm: number): boolean | undefined => {
    const circuit = board(`R1 a 0 ${ohm}`);
    const result = measure(circuit, asWritten(circuit.netlist), { mode: 'continuity', red: 'a' });
    return result.ok ? result.sounds : undefined;
  };

  it('sounds below the threshold of the meter only', () => {
    const threshold = HANDHELD_METER.continuity.closedBelowOhm;
    expect([sounds(0.1), sounds(threshold - 1), sounds(threshold + 1), sounds(1e6)]).toEqual([true, true, false, false]);
  });
});

describe('supply current', () => {
  const circuit = board('V1 a 0 5\nR1 a 0 100\nXBT b 0 BATTERY v=3.6 r=0.5\nR2 b 0 35.5\nI1 0 c 2m\nR3 c 0 100');
  const amps = (supply: string) => reading(circuit, { mode: 'amps', supply, power: { supplies: { V1: 5, XBT: 3.6, I1: 2e-3 } } });

  it('is what the supply gives out of its plus end', () => {
    expect(amps('V1')).toBeCloseTo(0.05, 6);
    expect(amps('xbt')).toBeCloseTo(0.1, 6);
    expect(amps('I1')).toBeCloseTo(-2e-3, 9);
  });

  it('is nothing from one that is not connected', () => {
    expect(reading(circuit, { mode: 'amps', supply: 'V1', power: { supplies: {} } })).toBe(0);
  });
});

describe('mistakes of the caller', () => {
  const circuit = board('V1 a 0 5\nR1 a 0 100');
  it.each<MeterRequest>([
    { mode: 'ohms', red: 'nowhere' },
    { mode: 'volts', red: 'a', power: { supplies: { V9: 5 } } },
    { mode: 'volts', red: 'a', power: { supplies: { R1: 5 } } },
    { mode: 'volts', red: 'a', power: { supplies: {}, switches: { V1: 'on' } } },
    { mode: 'amps', supply: 'R1', power: { supplies: {} } },
  ])('are named: %j', (request) => {
    expect(() => measure(circuit, asWritten(circuit.netlist), request)).toThrow(CircuitError);
  });
});
