import type { ModelFile } from '../../../bench/models/index.ts';

export interface BoardMark {
  /** Words for what stands here. */
  readonly text: string;
  readonly at: readonly [number, number];
}

interface BoardPictureProps {
  readonly board: NonNullable<ModelFile['board']>;
  readonly side: 'front' | 'back';
  readonly blocks: readonly (BoardMark & { readonly id: string; readonly chance: number | null })[];
  readonly points: readonly (BoardMark & { readonly id: string; readonly probe: boolean })[];
  readonly findings: readonly BoardMark[];
  readonly title: string;
}

const MARGIN_MM = 3;

/** The board seen from one side: blocks shaded by how likely they are at fault, findings as crosses, the point to probe ringed. */
export function BoardPicture({ board, side, blocks, points, findings, title }: BoardPictureProps) {
  const { width_mm: width, height_mm: height } = board;
  const place = ([x, y]: readonly [number, number]): { x: number; y: number } => ({ x: side === 'front' ? x : width - x, y: height - y });
  const unit = Math.min(width, height) / 100;
  return (
    <svg
      className="board"
      role="img"
      aria-label={title}
      viewBox={`${-MARGIN_MM} ${-MARGIN_MM} ${width + 2 * MARGIN_MM} ${height + 2 * MARGIN_MM}`}
    >
      <rect className="board-edge" x="0" y="0" width={width} height={height} rx={3 * unit} strokeWidth={0.6 * unit} />
      {blocks.map((block) => {
        const { x, y } = place(block.at);
        return (
          <g key={block.id}>
            <circle
              className="board-block"
              cx={x}
              cy={y}
              r={8 * unit}
              strokeWidth={0.5 * unit}
              fillOpacity={0.08 + 0.85 * (block.chance ?? 0)}
            />
            <text className="board-label" x={x} y={y + 13 * unit} fontSize={4.2 * unit} textAnchor="middle">
              {block.text}
            </text>
          </g>
        );
      })}
      {findings.map((finding) => {
        const { x, y } = place(finding.at);
        const r = 4 * unit;
        return (
          <path
            key={finding.text}
            className="board-finding"
            strokeWidth={1.2 * unit}
            d={`M${x - r} ${y - r}L${x + r} ${y + r}M${x + r} ${y - r}L${x - r} ${y + r}`}
          >
            <title>{finding.text}</title>
          </path>
        );
      })}
      {points.map((point) => {
        const { x, y } = place(point.at);
        return (
          <g key={point.id} className={point.probe ? 'board-point probe' : 'board-point'}>
            <circle cx={x} cy={y} r={1.6 * unit} />
            {point.probe && <circle className="probe-ring" cx={x} cy={y} r={5 * unit} strokeWidth={1.4 * unit} />}
            <title>{point.text}</title>
          </g>
        );
      })}
    </svg>
  );
}
