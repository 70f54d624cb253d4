import { useEffect, useRef, type PointerEvent } from 'react';
import type { DisplayFound, Pixels } from '../../../core/vision/index.ts';

export type Corner = readonly [number, number];

interface DisplayPictureProps {
  readonly pixels: Pixels;
  readonly corners: readonly Corner[];
  readonly found: DisplayFound | null;
  readonly onCorner: (corner: Corner) => void;
}

/** The photo with the corners of the display and what was found on it; a tap shows the next corner. */
export function DisplayPicture({ pixels, corners, found, onCorner }: DisplayPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const image = new ImageData(new Uint8ClampedArray(pixels.data), pixels.width, pixels.height);
    canvas.current!.getContext('2d')!.putImageData(image, 0, 0);
  }, [pixels]);
  const tap = (event: PointerEvent<HTMLElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    onCorner([((event.clientX - box.left) / box.width) * pixels.width, ((event.clientY - box.top) / box.height) * pixels.height]);
  };
  return (
    <figure className="display-picture" aria-label="The photo of the display, with its corners" onPointerUp={tap}>
      <canvas ref={canvas} width={pixels.width} height={pixels.height} aria-hidden="true" />
      <svg viewBox={`0 0 ${pixels.width} ${pixels.height}`} aria-hidden="true">
        <polygon className="display-edge" points={corners.map((corner) => corner.join(',')).join(' ')} />
        {corners.map(([x, y], i) => (
          <circle key={i} className="display-corner" cx={x} cy={y} r={pixels.width / 80} />
        ))}
        {found?.dots.map(({ x, y }) => {
          const [u, v] = onPhoto(found.corners, x, y);
          return <circle key={`${x} ${y}`} className="display-odd" cx={u} cy={v} r={pixels.width / 60} />;
        })}
      </svg>
    </figure>
  );
}

/** Where a place of the display lies on the photo, near enough for a ring around it. */
function onPhoto([a, b, c, d]: DisplayFound['corners'], x: number, y: number): Corner {
  const mix = (i: 0 | 1): number => (1 - y) * ((1 - x) * a[i] + x * b[i]) + y * ((1 - x) * d[i] + x * c[i]);
  return [mix(0), mix(1)];
}
