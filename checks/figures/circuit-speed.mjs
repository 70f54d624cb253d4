// Runs the built engine in a process of its own, as the server does, and prints CPU seconds: of the first run, and of five more.
import { readFileSync } from 'node:fs';
import { compileCircuit, powered, unpowered } from '../../dist/core/circuit/index.js';

const { netlist, sets, poweredDraws, unpoweredDraws, state, nodes } = JSON.parse(readFileSync(0, 'utf8'));
const drawsOf = (list) => list.map(({ scale, severity }) => ({ scale: Float64Array.from(scale), severity }));
const circuit = compileCircuit(netlist);

function cpuSeconds(run) {
  const before = process.cpuUsage();
  const { failures } = run();
  const { user, system } = process.cpuUsage(before);
  return { seconds: (user + system) / 1e6, failures };
}

const points = nodes.map((red) => ({ red }));
const fed = () => powered(circuit, sets, drawsOf(poweredDraws), { state, points });
const unfedPoints = nodes.flatMap((red) => [
  { red, mode: 'ohms' },
  { red, mode: 'diode' },
]);
const unfed = () => unpowered(circuit, sets, drawsOf(unpoweredDraws), { points: unfedPoints });

const runs = Array.from({ length: 6 }, () => cpuSeconds(fed));
process.stdout.write(JSON.stringify({ powered: runs, unpowered: cpuSeconds(unfed), points: unfedPoints.length }));
