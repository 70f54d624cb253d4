import type { BoardKnowledge, BoardPoint } from '../../boards/board-knowledge.ts';
import type { Caution, Model, ModelFile } from '../../models/index.ts';

type Point = ModelFile['points'][number];
type Check = ModelFile['checks'][number];

/** Name of the check that takes a reading at a point for which the file has none. */
export const measuring = (point: string): string => `measure.${point}`.slice(0, 64);

/** The points of the file and of the board, and the checks of the file with one for each point that has none. */
export function measuringChecks({ file, circuit }: Model, { points }: BoardKnowledge): { points: Point[]; checks: Check[] } {
  const named = new Set(file.points.map(({ id }) => id));
  const asked = new Set(file.checks.map(({ measure }) => measure));
  const blockOf = new Map(circuit!.parts.flatMap((part) => part.nets.map((net) => [net ?? '', part.block] as const)));
  const fallBack = file.blocks[0]!.id;
  const more = points
    .filter(({ id }) => !named.has(id))
    .map((point): Point => ({
      id: point.id,
      name: point.name,
      block: blockOf.get(point.red === '0' ? point.black : point.red) ?? fallBack,
      mode: point.mode,
      power: 'off',
      stage: point.stage,
      side: point.side === 'back' ? 'back' : 'front',
    }));
  return {
    points: [...file.points, ...more],
    checks: [...file.checks, ...points.filter(({ id }) => !asked.has(id)).map((point) => checkAt(file, point))],
  };
}

const checkAt = (file: ModelFile, point: BoardPoint): Check => ({
  id: measuring(point.id),
  name: `Measure ${point.name}`,
  minutes: point.minutes,
  stage: point.stage,
  measure: point.id,
  with: [],
  cautions: cautionsAt(file, point),
  how: '',
});

/** On a board that is fed a probe that slips shorts the cell. */
function cautionsAt({ cell }: ModelFile, { mode }: BoardPoint): Caution[] {
  const fed = mode === 'volts' || mode === 'amps';
  return [...(fed && cell?.chemistry === 'li-ion' ? (['lithium-cell'] as const) : []), 'esd'];
}
