import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readNetlist, type Netlist } from '../circuit/index.ts';
import { netlistText } from './netlist-text.ts';

function read(text: string): Netlist {
  const result = readNetlist(text);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.netlist;
}

/** What a netlist says, without where in the text it stands. */
const said = ({ title, parts, nodes, temperatureK }: Netlist) => ({
  title,
  nodes,
  temperatureK,
  parts: parts.map(({ line: _line, column: _column, ...part }) => part),
});

const shipped = (model: string): string => readFileSync(join(import.meta.dirname, `../../../models/${model}/board.cir`), 'utf8');

describe('a netlist that is written out', () => {
  it.each(['tern-tn20', 'corrie-cp4'])('says the same when it is read again: %s', (model) => {
    const first = read(shipped(model));
    expect(said(read(netlistText(first)))).toEqual(said(first));
  });

  it('keeps nested instances, controlled sources, models, substrates, own parameters, the temperature and long lines', () => {
    const first = read(`A deck of everything
.temp 41.5
.model SWM SW(VT=1 VH=0.1 RON=2 ROFF=1e6)
.model CSM CSW(IT=1m IH=0.1m)
.model NQ NPN(BF=99)
.model MM NMOS(VTO=0.7)
.subckt inner a b
R1 a p1 1k
R2 p1 b 2.2k tc=5
.ends
.subckt outer in
V1 in x 3
F1 x 0 v1 2
H1 y 0 v1 50
W1 y 0 v1 CSM
X1 in x inner
X2 x y inner
.ends
XA n1 outer
XB n2 outer
E1 n1 0 n2 0 4
G1 n1 0 n2 0 1e-3
S1 n1 n2 n2 0 SWM
I1 n1 0 PULSE(2m 5m 0 1 1 1 1)
Q1 n1 n2 0 sub NQ 3
Rs sub 0 1
M1 n1 n2 0 0 MM W=3u L=1u
XL n2 0 LOAD i=5m
C1 n1 n2 1u
`);
    const text = netlistText(first);
    expect(said(read(text))).toEqual(said(first));
    expect(Math.max(...text.split('\n').map(({ length }) => length))).toBeLessThanOrEqual(140);
  });

  it('refuses a part that the notation has no name for', () => {
    const part = { name: 'Q7', kind: 'R', nodes: ['a', 'b'], value: 1, params: {}, type: '', control: '' };
    expect(() => netlistText({ title: 'x', temperatureK: 300.15, parts: [part] })).toThrow('its name must begin with R');
  });
});
