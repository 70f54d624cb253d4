import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { BEHAVIOURS, compileCircuit, operatingPoint, readNetlist } from '../../src/core/circuit/index.ts';

const page = readFileSync(join(import.meta.dirname, '../../docs/netlist-format.md'), 'utf8');

it('shows a netlist that is read and settles with its lamp lit', () => {
  const text = /```spice\n([\s\S]+?)```/.exec(page)![1]!;
  const read = readNetlist(text);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const circuit = compileCircuit(read.netlist);
  const solution = operatingPoint(circuit);
  if (!solution.ok) throw new Error(solution.code);
  expect(solution.x[circuit.nodeIndex.get('v33')!]).toBeCloseTo(3.3, 2);
  expect(solution.x[circuit.nodeIndex.get('led')!]).toBeGreaterThan(1.5);
});

it.each(Object.entries(BEHAVIOURS))('names the nodes, the parameters and the defaults of %s', (kind, { nodes, needs, may }) => {
  const section = page.split(`**${kind} `)[1]!.split('\n**')[0]!;
  expect(section.startsWith(nodes.join(' '))).toBe(true);
  for (const name of needs) expect(section).toContain(`\`${name}\``);
  for (const [name, value] of Object.entries(may)) {
    const written = value > 0 && value < 1e-3 ? `${Math.round(value * 1e6)}u` : `${value}`;
    expect(section).toMatch(new RegExp(`\\b${name} ${written.replace('.', '\\.')}\\b`));
  }
});
