import type { DisplayFound } from '../../../core/vision/index.ts';
import type { Place } from './tap-picture.tsx';

interface DisplayMarksProps {
  readonly widthPx: number;
  readonly corners: readonly Place[];
  readonly found: DisplayFound | null;
}

/** The edge of the display and rings around its odd dots. */
export function DisplayMarks({ widthPx, corners, found }: DisplayMarksProps) {
  return (
    <>
      <polygon className="tap-edge" points={corners.map((corner) => corner.join(',')).join(' ')} />
      {corners.map(([x, y], i) => (
        <circle key={i} className="tap-place" cx={x} cy={y} r={widthPx / 80} />
      ))}
      {found?.dots.map(({ x, y }) => {
        const [u, v] = onPhoto(found.corners, x, y);
        return <circle key={`${x} ${y}`} className="tap-odd" cx={u} cy={v} r={widthPx / 60} />;
      })}
    </>
  );
}

/** Where a place of the display lies on the photo, near enough for a ring around it. */
function onPhoto([a, b, c, d]: DisplayFound['corners'], x: number, y: number): Place {
  const mix = (i: 0 | 1): number => (1 - y) * ((1 - x) * a[i] + x * b[i]) + y * ((1 - x) * d[i] + x * c[i]);
  return [mix(0), mix(1)];
}
