import { screwMat } from '../../../bench/hands/screw-mat.ts';
import type { MatShape } from '../../../core/teardown/index.ts';
import type { ModelFile } from '../../../bench/models/index.ts';

/** The mat on the screen, not at true scale: where each fastener lies, page by page. */
export function MatPicture({ file }: { readonly file: ModelFile }) {
  const mat = screwMat(file, 'A4');
  if (!mat.ok) return <p>One of its faces is larger than a page: lay its fasteners out by the list above.</p>;
  return mat.pages.map(({ shapes }, page) => (
    <svg
      key={page}
      className="mat"
      viewBox={`0 0 ${mat.widthMm} ${mat.heightMm}`}
      role="img"
      aria-label={`Mat for the fasteners, page ${page + 1} of ${mat.pages.length}`}
    >
      {shapes.map((shape, index) => (
        <Shape key={index} shape={shape} />
      ))}
    </svg>
  ));
}

function Shape({ shape }: { readonly shape: MatShape }) {
  switch (shape.kind) {
    case 'circle':
      return <circle cx={shape.x} cy={shape.y} r={shape.r} className={`mat-${shape.what}`} />;
    case 'line':
      return <line x1={shape.x1} y1={shape.y1} x2={shape.x2} y2={shape.y2} className={`mat-${shape.what}`} />;
    case 'rect':
      return <rect x={shape.x} y={shape.y} width={shape.width} height={shape.height} className="mat-outline" />;
    case 'text':
      return (
        <text x={shape.x} y={shape.y} fontSize={shape.mm} textAnchor={shape.anchor} className="mat-text">
          {shape.text}
        </text>
      );
  }
}
