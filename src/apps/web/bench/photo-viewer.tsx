import OpenSeadragon from 'openseadragon';
import { useEffect, useRef } from 'react';
import { photoUrl } from '../api/post-photos.ts';

interface PhotoViewerProps {
  readonly hash: string;
  readonly title: string;
  readonly close: () => void;
}

const ZOOM_STEP = 1.6;

/**
 * The viewer would write one rule into a style element of the page, which this page's own policy refuses. An inert
 * element with its mark tells it that the rule is there; `bench.css` holds the rule.
 */
function standInForItsStyle(): void {
  if (document.querySelector('style[data-openseadragon-mobile-css]')) return;
  const mark = document.createElementNS('urn:inert', 'style');
  mark.setAttribute('data-openseadragon-mobile-css', 'true');
  document.head.append(mark);
}

/** One photo over the whole page, to zoom and move by wheel, fingers, keys and buttons. */
export default function PhotoViewer({ hash, title, close }: PhotoViewerProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const stage = useRef<HTMLDivElement>(null);
  const viewer = useRef<OpenSeadragon.Viewer>(null);
  useEffect(() => {
    dialog.current!.showModal();
    standInForItsStyle();
    const made = OpenSeadragon({
      element: stage.current!,
      tileSources: { type: 'image', url: photoUrl(hash, 'view') },
      drawer: 'canvas',
      showNavigationControl: false,
      maxZoomPixelRatio: 6,
      animationTime: matchMedia('(prefers-reduced-motion: reduce)').matches ? 0 : 0.4,
    });
    viewer.current = made;
    return () => made.destroy();
  }, [hash]);
  const zoom = (factor: number): void => {
    viewer.current?.viewport.zoomBy(factor);
    viewer.current?.viewport.applyConstraints();
  };
  return (
    <dialog ref={dialog} className="viewer" aria-label={`Photo: ${title}`} onClose={close}>
      <div className="viewer-stage" ref={stage} />
      <div className="row viewer-tools">
        <button type="button" onClick={() => zoom(ZOOM_STEP)}>
          Closer
        </button>
        <button type="button" onClick={() => zoom(1 / ZOOM_STEP)}>
          Farther
        </button>
        <button type="button" onClick={() => viewer.current?.viewport.goHome()}>
          Whole photo
        </button>
        <a className="button" href={photoUrl(hash, 'original')} target="_blank" rel="noreferrer">
          Original
        </a>
        <button type="button" className="main" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
    </dialog>
  );
}
