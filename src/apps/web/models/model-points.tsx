import type { ModelFile, ReferenceReading } from '../../../bench/models/index.ts';
import { counted } from '../format/number.ts';
import { FromWhere } from '../grow/from-where.tsx';
import { reading } from '../format/reading.ts';
import { STAGE_WORDS } from '../format/words.ts';
import { Section } from '../ui/section.tsx';
import { spreadOf } from './spread.ts';
import { TableScroll } from '../ui/table-scroll.tsx';

const POWER = { off: 'off', battery: 'on battery', charger: 'on the charger' } as const;

/** Where to measure, and what good boards show there. */
export function ModelPoints({ file, readings }: { readonly file: ModelFile; readonly readings: readonly ReferenceReading[] }) {
  if (file.points.length === 0) return null;
  return (
    <Section id="points" title="Points">
      <TableScroll label="Points">
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col">Power</th>
            <th scope="col">Open to</th>
            <th scope="col">Side</th>
            <th scope="col" className="num">
              Good boards show
            </th>
          </tr>
        </thead>
        <tbody>
          {file.points.map((point) => (
            <tr key={point.id}>
              <th scope="row">
                {point.name} <FromWhere section="points" id={point.id} />
              </th>
              <td>{POWER[point.power]}</td>
              <td>{STAGE_WORDS[point.stage].toLowerCase()}</td>
              <td>{point.side}</td>
              <td className="num">{referenceWords(readings, point.id, point.mode)}</td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
    </Section>
  );
}

function referenceWords(readings: readonly ReferenceReading[], point: string, mode: ModelFile['points'][number]['mode']): string {
  const boards = readings.filter((each) => each.point === point && each.mode === mode).length;
  if (boards === 0) return 'not measured yet';
  const spread = spreadOf(readings, point, mode);
  if (spread === null) return `OL on ${counted(boards, 'board')}`;
  const also = spread.openBoards > 0 ? `, OL on ${spread.openBoards}` : '';
  return `${reading(spread.mean, mode)} ± ${reading(spread.spread, mode)} over ${counted(boards, 'board')}${also}`;
}
