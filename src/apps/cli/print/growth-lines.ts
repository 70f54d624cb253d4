import { scaledText } from '../../../core/quantity/index.ts';
import type { GrowthView, PooledPointView } from '../../../bench/views/index.ts';
import { counted } from './counted.ts';
import { percent, table } from './table.ts';

const UNITS = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' } as const;

interface Growth {
  readonly growth: GrowthView | null;
  readonly points: readonly PooledPointView[];
}

/** How a model grew: what it inherits, what was told, and its points. */
export const growthLines = ({ growth, points }: Growth): string[] => [
  ...(growth ? grownLines(growth) : ['A model of the folder: it does not grow here. Begin a copy of it with salvor model new --copy-of.']),
  ...pointLines(points),
];

function grownLines({
  model_id: id,
  version,
  from,
  places,
  parts,
  photos,
  left_out: leftOut,
  circuit_problems: troubles,
}: GrowthView): string[] {
  const told = places.map(({ section, id: entry, field, value, source, author }) => [
    `  ${[section, entry, ...(field === null ? [] : [field])].join(' ')}`,
    valueText(value),
    author === '' ? source : `${source} by ${author}`,
  ]);
  return [
    `${id}, version ${version}: inherits ${from.name}; ${counted(photos.length, 'photo')} of its board, ${counted(parts.length, 'part')} marked.`,
    ...(told.length > 0 ? ['Told', ...table(['', '', ''], told).slice(1)] : []),
    ...leftOut.map(({ place, why }) => `Left out: ${place}, for ${why}. Take it back, or put right what it leans on.`),
    ...troubles.map((trouble) => `No circuit yet: ${trouble}.`),
  ];
}

const LONGEST = 60;

function valueText(value: unknown): string {
  if (value === null) return 'taken away';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text;
}

/** What known-good boards show at points. */
export function pointLines(points: readonly PooledPointView[]): string[] {
  const rows = points.map((point) => [
    `  ${point.point}`,
    point.name,
    shown(point),
    point.boards.length === 0 ? '' : counted(point.boards.length, 'board'),
  ]);
  const differing = points.filter(({ differs }) => differs);
  return [
    ...(rows.length > 0 ? ['Known-good boards show', ...table(['', '', '', ''], rows, [2]).slice(1)] : []),
    ...differing.map(
      ({ name, revisions, mode, same_chance: same }) =>
        `Revisions differ at ${name}: ${revisions.map(({ revision, middle }) => `${revision} ${valueOf(middle, mode)}`).join(', ')} (by itself: ${percent(same ?? 1)}).`,
    ),
  ];
}

const valueOf = (value: number | null, mode: PooledPointView['mode']): string => (value === null ? 'OL' : scaledText(value, UNITS[mode]));

function shown({ middle, spread, mode, boards }: PooledPointView): string {
  if (boards.length === 0) return 'not measured';
  return middle === null ? 'OL' : `${valueOf(middle, mode)} ± ${valueOf(spread, mode)}`;
}
