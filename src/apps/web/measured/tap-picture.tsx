import { useEffect, useRef, type PointerEvent, type ReactNode } from 'react';
import type { Pixels } from '../../../core/vision/index.ts';

/** Pixels of the photo: across, down. */
export type Place = readonly [number, number];

interface TapPictureProps {
  readonly pixels: Pixels;
  readonly label: string;
  readonly onTap: (place: Place) => void;
  /** Marks over it, in an SVG of its pixels. */
  readonly children: ReactNode;
}

/** A photo on which places are shown by tapping them. */
export function TapPicture({ pixels, label, onTap, children }: TapPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const image = new ImageData(new Uint8ClampedArray(pixels.data), pixels.width, pixels.height);
    canvas.current!.getContext('2d')!.putImageData(image, 0, 0);
  }, [pixels]);
  const tap = (event: PointerEvent<HTMLElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    onTap([((event.clientX - box.left) / box.width) * pixels.width, ((event.clientY - box.top) / box.height) * pixels.height]);
  };
  return (
    <figure className="tap-picture" aria-label={label} onPointerUp={tap}>
      <canvas ref={canvas} width={pixels.width} height={pixels.height} aria-hidden="true" />
      <svg viewBox={`0 0 ${pixels.width} ${pixels.height}`} aria-hidden="true">
        {children}
      </svg>
    </figure>
  );
}
