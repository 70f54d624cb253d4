import type { CalibrationView } from '../../../bench/views/index.ts';
import { chance, counted } from '../format/number.ts';
import { TableScroll } from '../ui/table-scroll.tsx';
import { ReliabilityPlot } from './reliability-plot.tsx';

type Forecast = CalibrationView['forecasts'][number];

const TITLES: Readonly<Record<Forecast['about'], string>> = {
  end: 'That a unit ends as a working one',
  remedy: 'That it works after a remedy',
  trial: 'That a function works when it is tried',
};

/** How one kind of chance held: a picture, the same as a table, and the score in words. */
export function ForecastPart({ forecast }: { readonly forecast: Forecast }) {
  const { about, count, bands } = forecast;
  return (
    <article>
      <h3>{TITLES[about]}</h3>
      <figure>
        <ReliabilityPlot bands={bands} />
        <figcaption className="small muted">{scoreWords(forecast)}</figcaption>
      </figure>
      <TableScroll label={`${TITLES[about]}, ${counted(count, 'time')}`}>
        <thead>
          <tr>
            <th scope="col">Said</th>
            <th scope="col" className="num">
              On average
            </th>
            <th scope="col" className="num">
              Came
            </th>
            <th scope="col" className="num">
              Nine in ten
            </th>
            <th scope="col" className="num">
              Times
            </th>
          </tr>
        </thead>
        <tbody>
          {bands.map((band) => (
            <tr key={band.low}>
              <th scope="row">
                {Math.round(100 * band.low)} to {Math.round(100 * band.high)} %
              </th>
              <td className="num">{chance(band.said)}</td>
              <td className="num">{share(band.came)}</td>
              <td className="num">
                {share(band.came_low)} to {share(band.came_high)}
              </td>
              <td className="num">{band.count}</td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
    </article>
  );
}

/** Of what was counted: none and all are so. */
const share = (value: number): string => `${Math.round(100 * value)} %`;

function scoreWords({ count, score, calibration, resolution, uncertainty, bands }: Forecast): string {
  const off = bands.filter(({ said, came_low: low, came_high: high }) => said < low || said > high).length;
  const held = off === 0 ? 'Every band came as it was said, as far as can be told' : `${counted(off, 'band')} came otherwise than said`;
  const saying = score <= uncertainty ? 'better than always saying the average' : 'no better than always saying the average';
  return `${counted(count, 'time')}. ${held}. Score ${score.toFixed(3)}, ${saying} (${uncertainty.toFixed(3)}): ${calibration.toFixed(3)} lost by being off, ${resolution.toFixed(3)} won by telling cases apart.`;
}
