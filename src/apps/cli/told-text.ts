import { NOT_TOLD, toldIn, TOLD_COLUMNS, type Told } from '../../bench/fit/index.ts';
import { misuse } from './stop.ts';

const COLUMN_OF: Readonly<Record<string, (typeof TOLD_COLUMNS)[number]>> = {
  kind: 'part_kind',
  height: 'height_mm',
  mouth: 'mouth_deg',
  reach: 'mouth_reach_mm',
  contacts: 'contacts',
};

/** What pads do not say, as it is typed: "height=2.5,mouth=90,reach=3,contacts=top,kind=connector". Nothing typed tells nothing. */
export function toldText(text: string | undefined, flag: string): Told {
  if (text === undefined) return NOT_TOLD;
  const cells = Object.fromEntries(TOLD_COLUMNS.map((column) => [column, ''])) as Record<(typeof TOLD_COLUMNS)[number], string>;
  for (const piece of text.split(',')) {
    const [key = '', value = ''] = piece.split('=').map((each) => each.trim());
    const column = Object.hasOwn(COLUMN_OF, key) ? COLUMN_OF[key] : undefined;
    if (!column || value === '')
      throw misuse('bad-usage', { where: flag, detail: `"${piece}" is none of ${Object.keys(COLUMN_OF).join(', ')} with = and a value` });
    cells[column] = value;
  }
  const told = toldIn(cells);
  if ('message' in told)
    throw misuse('bad-usage', { where: flag, detail: `In ${flag}, ${told.field} ${told.message}. ${told.next.replace(/\.$/, '')}` });
  return told;
}
