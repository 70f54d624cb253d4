import { randomStream } from '../../src/core/numeric/index.ts';

const lines = (count: number, line: (i: number) => string): string => Array.from({ length: count }, (_, i) => line(i)).join('\n');

/** Netlists built to unfold without end, to fill the matrix, or to have no answer; `refused` where the reader itself must say no. */
export function hostileNetlists(): readonly { readonly name: string; readonly text: string; readonly refused: boolean }[] {
  const random = randomStream('netlists made to hurt');
  const node = (of: number): string => `n${Math.floor(random() * of)}`;
  const doubling = lines(30, (i) => `.subckt s${i} a b\nX1 a m s${i + 1}\nX2 m b s${i + 1}\n.ends`);
  return [
    { name: 'a subcircuit that calls itself', text: 't\n.subckt s a b\nX1 a b s\n.ends\nX1 1 0 s', refused: true },
    { name: 'subcircuits that double thirty times', text: `t\n${doubling}\n.subckt s30 a b\nR1 a b 1\n.ends\nX1 1 0 s0`, refused: true },
    { name: 'twenty-five thousand parts', text: `t\n${lines(25_000, (i) => `R${i} n${i} n${i + 1} 1k`)}`, refused: true },
    { name: 'more text than is read', text: `t\n${'* x'.padEnd(4_100_000, 'x')}`, refused: true },
    { name: 'a parameter that is itself', text: 't\n.param a={a}\nR1 1 0 {a}', refused: true },
    { name: 'parameters in a ring', text: 't\n.param a={b} b={c} c={a}\nR1 1 0 {a}', refused: true },
    { name: 'brackets without end', text: `t\nR1 1 0 {${'('.repeat(50_000)}1${')'.repeat(50_000)}}`, refused: true },
    { name: 'a division by nothing', text: 't\nR1 1 0 {1/0}', refused: true },
    { name: 'a resistor of no size', text: 't\nR1 1 0 1e999', refused: true },
    { name: 'sources in a ring', text: 't\nV1 1 0 1\nV2 1 0 2\nR1 1 0 1', refused: false },
    { name: 'nodes that nothing holds', text: `t\nV1 1 0 1\n${lines(2000, (i) => `C${i} a${i} b${i} 1u`)}`, refused: false },
    {
      name: 'two hundred nodes, each joined to each',
      text: `t\nV1 n0 0 5\n${lines(199, (i) => lines(199 - i, (k) => `R${i}x${k} n${i} n${i + k + 1} 1k`))}`,
      refused: false,
    },
    {
      name: 'a thousand diodes nose to tail',
      text: `t\nV1 n0 0 1000\n${lines(1000, (i) => `D${i} n${i} n${i + 1} d`)}\nR1 n1000 0 1\n.model d d(is=1e-30 n=0.5)`,
      refused: false,
    },
    { name: 'gain around a ring', text: 't\nE1 a 0 b 0 1e12\nE2 b 0 a 0 1e12\nR1 a 0 1\nR2 b 0 1', refused: false },
    {
      name: 'values thirty powers of ten apart',
      text: 't\nV1 a 0 1e15\nR1 a b 1e-15\nR2 b c 1e15\nR3 c 0 1e-15\nD1 c 0 d\n.model d d',
      refused: false,
    },
    {
      name: 'fifteen thousand resistors at random',
      text: `t\nV1 n0 0 5\n${lines(15_000, (i) => `R${i} ${node(5000)} ${node(5000)} 1k`)}`,
      refused: false,
    },
  ];
}
