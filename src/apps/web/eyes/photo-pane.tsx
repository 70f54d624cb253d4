import { useId, useRef, type ReactNode } from 'react';
import { ZoomButtons } from '../board/board-tools.tsx';
import { toPicture, type Frame, type Place } from '../board/frame.ts';
import { usePanZoom, type HeldView } from '../board/use-pan-zoom.ts';

interface PhotoPaneProps {
  readonly frame: Frame;
  /** What is in the window, shared with the other pictures of the pair. */
  readonly held?: readonly [HeldView, (held: HeldView) => void];
  readonly name: string;
  readonly title: string;
  /** One over the other; each is shown from the left as far as its share. */
  readonly pictures: readonly { readonly url: string; readonly share: number }[];
  /** px of the frame, from its upper left corner. */
  readonly onTap: (at: Place) => void;
  readonly onDrag?: ((from: Place, to: Place) => void) | null;
  /** What is drawn over them; `unit` is a size that stays the same on the screen. */
  readonly renderMarks: (unit: number) => ReactNode;
}

/** A photo to move, zoom and point at by finger, mouse and keys. */
export function PhotoPane({ frame, held, name, title, pictures, onTap, onDrag = null, renderMarks }: PhotoPaneProps) {
  const svg = useRef<SVGSVGElement>(null);
  const clip = useId();
  const drag = onDrag && ((from: Place, to: Place) => onDrag(toPicture(frame, from), toPicture(frame, to)));
  const pan = usePanZoom({ svg, frame, onTap: (at) => onTap(toPicture(frame, at)), onDrag: drag, ...(held ? { held } : {}) });
  const near = pan.view.zoom > 1;
  const { width, height } = frame;
  return (
    <div className="board-window">
      <p className="small eyes-name">{name}</p>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- see its tabIndex */}
      <fieldset
        className="board-stage"
        aria-label={`${name}: arrow keys move, plus and minus zoom, 0 shows all`}
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what is moved by finger must be moved by keys, too (WCAG 2.1.1)
        tabIndex={0}
        onKeyDown={pan.onKeyDown}
      >
        <svg
          ref={svg}
          className={`board board-map photo-map ${near ? 'board-near' : ''} ${onDrag ? 'board-drawing' : ''}`}
          role="img"
          aria-label={title}
          viewBox={pan.box}
          {...pan.pointer}
        >
          {pictures.map(({ url, share }, i) => (
            <g key={url}>
              <clipPath id={`${clip}-${i}`}>
                <rect x="0" y="0" width={width * share} height={height} />
              </clipPath>
              <image href={url} x="0" y="0" width={width} height={height} clipPath={`url(#${clip}-${i})`} />
            </g>
          ))}
          {renderMarks(width / pan.view.zoom / 400)}
        </svg>
      </fieldset>
      <fieldset className="board-tools" aria-label={`Move the picture: ${name}`}>
        <ZoomButtons pan={pan} />
      </fieldset>
    </div>
  );
}
