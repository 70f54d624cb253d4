import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A process of its own: plans the pile in a file with the built program and prints one line when the plan stands. */
const [dist, file] = process.argv.slice(2);
const { planPile } = await import(join(dist, 'core/planning/index.js'));
const { openLinearSolver } = await import(join(dist, 'edges/solver/index.js'));
const solver = openLinearSolver();
const { plan } = await planPile(JSON.parse(readFileSync(file, 'utf8')), { seed: 'cold', solve: solver.solve });
const { user, system } = process.cpuUsage();
console.log(JSON.stringify({ meanMinor: plan.profit.meanMinor, cpuS: (user + system) / 1e6 }));
process.exit();
