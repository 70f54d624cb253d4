import type { BoardPoint } from '../boards/board-knowledge.ts';
import type { Model } from '../models/index.ts';
import type { PointView } from '../views/index.ts';

const POWER_WORDS = { off: 'power off, battery out', battery: 'on battery', charger: 'on the charger' } as const;

/** Every point at which a board of the model can be measured: those of its file, then those of its circuit as far as they are known. */
export function pointViews({ file }: Model, known: readonly BoardPoint[]): PointView[] {
  const named = new Set(file.points.map(({ id }) => id));
  const stateName = (id: string): string | undefined => file.circuit?.states.find((state) => state.id === id)?.name;
  const ofFile = file.points.map((point): PointView => {
    const { red = null, black, state } = file.circuit?.points[point.id] ?? {};
    const { id, name, mode, stage, side } = point;
    const power = { id: state ?? point.power, name: (state && stateName(state)) ?? POWER_WORDS[point.power] };
    return { id, name, mode, stage, side, power, red, black: red === null ? null : (black ?? '0') };
  });
  const ofCircuit = known
    .filter(({ id }) => !named.has(id))
    .map((point): PointView => {
      const { id, name, mode, stage, side, power, red, black, supply } = point;
      const isCurrent = supply !== undefined;
      const at = { red: isCurrent ? null : red, black: isCurrent ? null : black };
      return { id, name, mode, stage, side, power: { id: power, name: stateName(power) ?? power }, ...at };
    });
  return [...ofFile, ...ofCircuit];
}
