import { Link } from 'wouter';
import type { CalibrationView } from '../../../bench/views/index.ts';
import { counted } from '../format/number.ts';
import { Fold } from '../ui/fold.tsx';
import { PairPlot } from '../ui/pair-plot.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';

type Estimates = CalibrationView['price'];

interface EstimatesPartProps {
  readonly title: string;
  readonly estimates: Estimates;
  readonly say: (value: number) => string;
}

/** What was expected beside what came, unit by unit. */
export function EstimatesPart({ title, estimates, say }: EstimatesPartProps) {
  if (estimates.length === 0) return null;
  return (
    <article>
      <h3>{title}</h3>
      <figure>
        <PairPlot pairs={estimates.map(({ item_id: key, expected, came }, i) => ({ key: `${key} ${i}`, expected, came }))} say={say} />
        <figcaption className="small muted">{wordsOf(estimates, say)}</figcaption>
      </figure>
      <Fold title={`${title}, ${counted(estimates.length, 'unit')}`}>
        <TableScroll label={title}>
          <thead>
            <tr>
              <th scope="col">Unit</th>
              <th scope="col" className="num">
                Expected
              </th>
              <th scope="col" className="num">
                Came
              </th>
            </tr>
          </thead>
          <tbody>
            {estimates.map(({ item_id: id, number, name, at, expected, low, high, came }) => (
              <tr key={`${id} ${at}`}>
                <th scope="row">
                  <Link href={`/bench/${encodeURIComponent(id)}`}>
                    <StockTag number={number} /> {name}
                  </Link>
                </th>
                <td className="num">
                  {say(expected)}
                  {low !== null && high !== null && (
                    <small className="muted">
                      {' '}
                      ({say(low)} to {say(high)})
                    </small>
                  )}
                </td>
                <td className="num">{say(came)}</td>
              </tr>
            ))}
          </tbody>
        </TableScroll>
      </Fold>
    </article>
  );
}

function wordsOf(estimates: Estimates, say: (value: number) => string): string {
  const sum = (of: (each: Estimates[number]) => number): number => estimates.reduce((all, each) => all + of(each), 0);
  const together = `${say(sum(({ came }) => came))} came where ${say(sum(({ expected }) => expected))} were expected, all together.`;
  const limited = estimates.filter(({ low, high }) => low !== null && high !== null);
  if (limited.length === 0) return together;
  const inside = limited.filter(({ low, high, came }) => came >= low! && came <= high!).length;
  return `${together} ${inside} of ${limited.length} fell within the limits of four in five.`;
}
