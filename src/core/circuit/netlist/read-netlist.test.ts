import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNetlist, type Netlist, type NetlistProblem } from '../index.ts';

function read(text: string): Netlist {
  const result = readNetlist(text);
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join('; '));
  return result.netlist;
}

function problems(text: string): readonly NetlistProblem[] {
  const result = readNetlist(text);
  return result.ok ? [] : result.problems;
}

const partsOf = (text: string): [string, string, number, string][] =>
  read(text).parts.map((part) => [part.name, part.kind, part.value, part.nodes.join(' ')]);

describe('the reader of netlists', () => {
  it('takes the first line as the title and reads values with the suffixes of the notation', () => {
    const text = 'title\nR1 a 0 4k7\nR2 a b 1MEG\nC1 b 0 100nF\nL1 b c 10uH\nV1 c 0 DC 3.3V\nI1 0 a 2m\n.end\nR9 never read 1';
    expect(read(text).title).toBe('title');
    expect(partsOf(text)).toEqual([
      ['R1', 'R', 4700, 'a 0'],
      ['R2', 'R', 1e6, 'a b'],
      ['C1', 'C', 1e-7, 'b 0'],
      ['L1', 'L', 1e-5, 'b c'],
      ['V1', 'V', 3.3, 'c 0'],
      ['I1', 'I', 2e-3, '0 a'],
    ]);
  });

  it('joins continuation lines and drops comments of every form', () => {
    expect(partsOf('t\n* a comment\nR1 a\n+ b ; and more\n+ 10k $ and more\n\n.end')).toEqual([['R1', 'R', 10e3, 'a b']]);
  });

  it('reads names without regard to case and takes gnd for 0', () => {
    expect(partsOf('t\nr1 VCC GND 1K')).toEqual([['r1', 'R', 1000, 'vcc 0']]);
  });

  it.each([
    ['PULSE(0 5 1n 1n 1n 5u 10u)', 0],
    ['SIN(1.5 1 1k)', 1.5],
    ['AC 1', 0],
    ['DC 2 AC 1', 2],
    ['PWL(0 1.2 1m 3)', 1.2],
    ['', 0],
  ])('takes the value at rest of a source "%s"', (source, value) => {
    expect(read(`t\nV1 a 0 ${source}\nR1 a 0 1`).parts[0]!.value).toBe(value);
  });

  it('computes parameters in braces and quotes, in any order, with functions and powers', () => {
    const text = "t\n.param b={a*2} a=1k\nR1 x 0 {b+sqrt(16)}\nR2 x 0 '2^3^2'\nR3 x 0 b\nR4 x 0 {-2*-(1+1meg)/2}";
    expect(partsOf(text).map(([, , value]) => value)).toEqual([2004, 512, 2000, 1000001]);
  });

  it('unfolds subcircuits with parameters, local models and nodes of their own', () => {
    const text = `t
.subckt half in out params: r=1k
R1 in m {r}
R2 m out {r}
D1 m 0 DX
.model DX D(IS=2e-14)
.ends
X1 a b half r=2k
X2 b 0 half
V1 a 0 1`;
    expect(read(text).parts.map((part) => `${part.name}:${part.nodes.join('-')}=${part.value}`)).toEqual([
      'X1.R1:a-x1.m=2000',
      'X1.R2:x1.m-b=2000',
      'X1.D1:x1.m-0=0',
      'X2.R1:b-x2.m=1000',
      'X2.R2:x2.m-0=1000',
      'X2.D1:x2.m-0=0',
      'V1:a-0=1',
    ]);
    expect(read(text).parts[2]!.params['is']).toBe(2e-14);
  });

  it('reads the behavioural parts of boards with their defaults', () => {
    const part = read('t\nXU1 vin vout 0 vin LINREG vset=3.3 dropout=0.15\nV1 vin 0 5').parts[0]!;
    expect(part).toMatchObject({ kind: 'LINREG', name: 'XU1', nodes: ['vin', 'vout', '0', 'vin'] });
    expect(part.params).toMatchObject({ vset: 3.3, dropout: 0.15, ilimit: 0.3 });
  });

  it('lets a subcircuit of the same name stand before a behavioural part', () => {
    expect(partsOf('t\n.subckt load a b\nR1 a b 50\n.ends\nX1 n 0 load')).toEqual([['X1.R1', 'R', 50, 'n 0']]);
  });

  it('says which lines have no effect', () => {
    expect(read('t\nR1 a 0 1\n.tran 1n 1u\n.end').notes).toEqual(['line 3: .tran has no effect on an operating point']);
  });
});

describe('a mistake in a netlist', () => {
  it.each([
    ['t\nR1 a 0 4k7x7', 'number', 2, 8],
    ['t\nR1 a', 'nodes', 2, 1],
    ['t\nR1 a 0 0', 'number', 2, 8],
    ['t\nD1 a 0 NONE', 'unknown-name', 2, 8],
    ['t\nD1 a 0 QX\n.model QX NPN', 'unknown-name', 2, 8],
    ['t\nZ1 a 0 5', 'unsupported', 2, 1],
    ['t\nR1 a 0 {1+}', 'expression', 2, 8],
    ['t\nR1 a 0 {nope}', 'unknown-name', 2, 8],
    ['t\nR1 a 0 {1/0}', 'expression', 2, 8],
    ['t\nR1 a 0 1\nR1 b 0 1', 'duplicate', 3, 1],
    ['t\nX1 a b none', 'unknown-name', 2, 8],
    ['t\n.subckt s a\nR1 a 0 1\n.ends\nX1 a b s', 'nodes', 5, 1],
    ['t\n.subckt s a\nX1 a s\n.ends\nX1 a s', 'too-large', 3, 1],
    ['t\n.include other.cir', 'unsupported', 2, 1],
    ['t\nX1 a 0 LOAD amps=1', 'unknown-name', 2, 18],
    ['t\nX1 a 0 LOAD', 'syntax', 2, 1],
    ['t\nF1 a 0 VX 2', 'unknown-name', 2, 1],
    ['t\nV1 a a 5', 'nodes', 2, 1],
    ['t\n.param a={b} b={a}\nR1 x 0 {a}', 'unknown-name', 2, 10],
    ['t\n+ 1k', 'syntax', 2, 1],
    ['t\nR1 a 0 {1', 'syntax', 2, 8],
  ])('%j is named as %s at line %i, column %i', (text, code, line, column) => {
    expect(problems(text)[0]).toMatchObject({ code, line, column });
  });

  it('is not the only one that is told: all that can be found come at once', () => {
    expect(problems('t\nR1 a 0 x\nR2 a 0 1\nR3 a 0 y').map(({ line }) => line)).toEqual([2, 4]);
  });

  it('never throws, whatever the text', () => {
    const words = fc.constantFrom(
      'R1',
      'X1',
      '.subckt',
      '.ends',
      '.param',
      '.model',
      'a',
      '0',
      '=',
      '{',
      '}',
      '1k',
      '{a+',
      '(',
      ')',
      '+',
      '*',
      "'",
      '\n',
      ' ',
      '.temp',
      'D1',
      'NPN',
      'LINREG',
      'vset',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(words, fc.string({ maxLength: 4 })), { maxLength: 60 }), (parts) => {
        const result = readNetlist(`t\n${parts.join(' ')}`);
        if (!result.ok) expect(result.problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });
});
