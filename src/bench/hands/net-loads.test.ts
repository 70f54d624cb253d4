import { describe, expect, it } from 'vitest';
import { LAMP_MODEL } from '../advice/testing/lamp-board.ts';
import { smallModels } from '../testing/small-model.ts';
import { netLoads } from './index.ts';

describe('what the nets of a board carry', () => {
  it('is the worst of all power states, largest first, for nets with parts on them', () => {
    const loads = netLoads(LAMP_MODEL);
    const nets = new Set(LAMP_MODEL.circuit!.parts.flatMap((part) => part.nets));
    expect(loads.length).toBeGreaterThan(2);
    expect(loads.every(({ net, current_a: amps }) => nets.has(net) && amps > 0 && amps < 10)).toBe(true);
    expect(loads.map(({ current_a: amps }) => amps)).toEqual(loads.map(({ current_a: amps }) => amps).toSorted((a, b) => b - a));
    const states = LAMP_MODEL.file.circuit!.states.map(({ name }) => name);
    expect(states).toContain(loads[0]!.state);
  });

  it('is not known without a circuit', () => {
    expect(netLoads(smallModels().get('lamp-1')!)).toEqual([]);
  });
});
