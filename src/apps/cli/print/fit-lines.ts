import type { FitLine, FitView } from '../../../bench/views/index.ts';
import { table } from './table.ts';

const hundredths = (mm: number): string => mm.toFixed(2);

/** Every part with its answer and why, the best one pad by pad; then what nothing can be said of. */
export function fitLines({ done, fits, without_terminals: unknown, problems }: FitView): string[] {
  return [
    ...fits.flatMap((fit, i) => [`${heading(fit)}: ${fit.sentence}`, ...said(fit), ...(i === 0 ? padLines(fit) : [])]),
    ...(fits.length === 0 ? ['No part to lay over it.'] : []),
    ...(done ? [] : ['Not every part was tried: it took too long.']),
    ...(unknown.length === 0
      ? []
      : [`Nothing can be said of ${unknown.map(({ name }) => name).join(', ')}: salvor add bag BAG --pattern FILE notes the terminals.`]),
    ...problems.map(({ sentence }) => `Left out: ${sentence}`),
  ];
}

const heading = ({ name, from, count, bag_id: bag, supplier, price }: FitLine): string => {
  if (from === 'drawer') return `${name} (${count} in bag ${bag})`;
  const offer = [supplier, price].filter((part) => part !== '').join(', ');
  return offer === '' ? name : `${name} (${offer})`;
};

const said = ({ reasons, asks }: FitLine): string[] => [...new Set([...reasons, ...asks].map(({ sentence }) => `  ${sentence}`))];

function padLines({ pads, placing, found_by: foundBy }: FitLine): string[] {
  if (pads.length === 0) return [];
  const rows = pads.map(({ pins, onto, covered, off_mm: off, room, level }) => [
    pins.join('/'),
    onto.join('/'),
    `${Math.round(100 * covered)} %`,
    hundredths(off),
    ...(room ? [room.toe_mm, room.heel_mm, room.side_mm].map(hundredths) : ['', '', '']),
    level ?? '',
  ]);
  return [
    `  Turned by ${Math.round(placing.turn_deg * 10) / 10}°, moved by ${hundredths(placing.dx_mm)}, ${hundredths(placing.dy_mm)} mm; found by its ${foundBy}.`,
    ...table(['pin', 'pad', 'covered', 'off mm', 'toe', 'heel', 'side', 'level'], rows, [2, 3, 4, 5, 6]).map((line) => `  ${line}`),
  ];
}
