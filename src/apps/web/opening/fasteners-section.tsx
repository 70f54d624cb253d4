import type { ModelFile } from '../../../bench/models/index.ts';
import type { OpeningView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { MatLinks } from './mat-links.tsx';
import { MatPicture } from './mat-picture.tsx';

/** What came out against what went in, what to buy, and the mat on paper and on the screen. */
export function FastenersSection({ opening, file }: { readonly opening: OpeningView; readonly file: ModelFile }) {
  const { sets, shopping } = opening.fasteners;
  if (sets.length === 0) return null;
  return (
    <Section id="fasteners" title="Screws and clips" aside={stateOf(opening)}>
      <TableScroll label="Fasteners by set">
        <table>
          <thead>
            <tr>
              <th scope="col">Set</th>
              <th scope="col" className="num">
                Belong
              </th>
              <th scope="col" className="num">
                Out
              </th>
              <th scope="col" className="num">
                Back
              </th>
              <th scope="col" className="num">
                Mat
              </th>
            </tr>
          </thead>
          <tbody>
            {sets.map((set) => (
              <tr key={set.set}>
                <th scope="row">
                  {set.name}
                  <span className="small muted">
                    {' '}
                    {set.drive}, {set.length_mm} mm{set.foreign > 0 && `, ${set.foreign} of another kind`}
                  </span>
                </th>
                <td className="num">{set.belongs}</td>
                <td className="num">{set.out}</td>
                <td className="num">{set.back}</td>
                <td className="num">{set.on_mat}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
      {shopping.length > 0 && (
        <>
          <h3>To buy</h3>
          <ul className="plain-list">
            {shopping.map(({ set, text, count, price_minor: price }) => (
              <li key={set}>
                {count} × {text}
                {price !== null && <span className="muted"> about {money(price * count, file.currency)}</span>}
              </li>
            ))}
          </ul>
        </>
      )}
      <MatLinks modelId={file.id} />
      <Fold title="The mat on the screen">
        <MatPicture file={file} />
      </Fold>
    </Section>
  );
}

function stateOf({ fasteners }: OpeningView): string {
  const onMat = fasteners.sets.reduce((sum, set) => sum + set.on_mat, 0);
  if (onMat > 0) return `${onMat} on the mat`;
  if (fasteners.sets.every(({ out }) => out === 0)) return 'None came out';
  if (fasteners.whole) return 'All back in their places';
  return fasteners.even ? 'As many in as out' : 'More went in than came out';
}
