import { Simulation } from 'eecircuit-engine';

let engine: Promise<Simulation> | undefined;

async function start(): Promise<Simulation> {
  const simulation = new Simulation();
  await simulation.start();
  return simulation;
}

/** Node voltages (lower-case name → V) of the operating point by the general simulator, or undefined when it finds none. */
export async function ngspiceVoltages(netlist: string): Promise<Map<string, number> | undefined> {
  engine ??= start();
  const simulation = await engine;
  simulation.setNetList(netlist);
  const result = await simulation.runSim().catch(() => undefined);
  if (!result || result.dataType !== 'real') return undefined;
  const voltages = new Map<string, number>();
  for (const { name, type, values } of result.data) {
    const inner = /^v\((.+)\)$/i.exec(name);
    if (type === 'voltage') voltages.set((inner ? inner[1]! : name).toLowerCase(), values[0] as number);
  }
  return voltages;
}
