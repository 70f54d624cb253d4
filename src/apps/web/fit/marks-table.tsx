import { mmPerPx, type MarkedPad, type PhotoScale } from '../../../core/fit/index.ts';
import { TableScroll } from '../ui/table-scroll.tsx';
import { CLICK_PX, scaleError } from './photo-marks.ts';

interface MarksTableProps {
  readonly pads: readonly MarkedPad[];
  readonly scale: PhotoScale;
  readonly onChange: (pads: readonly MarkedPad[]) => void;
}

/** The marked pads in mm, to number and to correct. */
export function MarksTable({ pads, scale, onChange }: MarksTableProps) {
  const mm = mmPerPx(scale);
  const change = (index: number, part: Partial<MarkedPad>): void =>
    onChange(pads.map((pad, i) => (i === index ? { ...pad, ...part } : pad)));
  return (
    <>
      <TableScroll label="Pads on the photo">
        <thead>
          <tr>
            <th scope="col">Pin</th>
            <th scope="col">Right (mm)</th>
            <th scope="col">Down (mm)</th>
            <th scope="col">Wide (mm)</th>
            <th scope="col">High (mm)</th>
            <th scope="col">Take away</th>
          </tr>
        </thead>
        <tbody>
          {pads.map((pad, i) => (
            // oxlint-disable-next-line react/no-array-index-key -- pads may share a name, and their order is what they are
            <tr key={i}>
              <td>
                <input
                  aria-label={`Pin of pad ${i + 1}`}
                  className="short-input"
                  value={pad.name}
                  maxLength={20}
                  onChange={(event) => change(i, { name: event.target.value })}
                />
              </td>
              <td>{(pad.xPx * mm).toFixed(2)}</td>
              <td>{(pad.yPx * mm).toFixed(2)}</td>
              {(['wPx', 'hPx'] as const).map((size) => (
                <td key={size}>
                  <input
                    aria-label={`${size === 'wPx' ? 'Width' : 'Height'} of pad ${i + 1} in mm`}
                    className="short-input"
                    type="number"
                    inputMode="decimal"
                    step="any"
                    min={0}
                    value={Number((pad[size] * mm).toFixed(3))}
                    onChange={(event) => event.target.valueAsNumber > 0 && change(i, { [size]: event.target.valueAsNumber / mm })}
                  />
                </td>
              ))}
              <td>
                <button
                  type="button"
                  aria-label={`Take pad ${i + 1} away`}
                  onClick={() => onChange(pads.filter((_, other) => other !== i))}
                >
                  Away
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
      <p className="small muted">
        Sizes are good to about ± {(Math.SQRT2 * CLICK_PX * mm).toFixed(2)} mm for clicks that are good to a pixel, and ±{' '}
        {(100 * scaleError(scale)).toFixed(1)} % of any distance for the scale.
      </p>
    </>
  );
}
