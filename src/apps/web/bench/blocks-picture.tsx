import type { ModelFile } from '../../../bench/models/index.ts';
import { chance } from '../format/number.ts';

export interface BoardMark {
  /** Words for what stands here. */
  readonly text: string;
  readonly at: readonly [number, number];
}

type BoardBlock = BoardMark & { readonly id: string; readonly chance: number | null };

interface BlocksPictureProps {
  readonly board: NonNullable<ModelFile['board']>;
  readonly side: 'front' | 'back';
  readonly blocks: readonly BoardBlock[];
  readonly points: readonly (BoardMark & { readonly id: string; readonly probe: boolean })[];
  readonly findings: readonly BoardMark[];
  readonly title: string;
}

const MARGIN_MM = 2;
const FAINT = 0.06;
const STRONG = 0.85;

/**
 * The board seen from one side: blocks numbered and shaded by how likely they are at fault beside the likeliest,
 * findings as crosses, the point to probe ringed; the names of the numbers below.
 */
export function BlocksPicture({ board, side, blocks, points, findings, title }: BlocksPictureProps) {
  const { width_mm: width, height_mm: height } = board;
  const place = ([x, y]: readonly [number, number]): { x: number; y: number } => ({ x: side === 'front' ? x : width - x, y: height - y });
  const unit = Math.min(width, height) / 100;
  const most = Math.max(...blocks.map((block) => block.chance ?? 0), 0.01);
  const viewBox = [-MARGIN_MM, -MARGIN_MM, width + 2 * MARGIN_MM, height + 2 * MARGIN_MM].join(' ');
  return (
    <>
      <svg className="board" role="img" aria-label={title} viewBox={viewBox}>
        <rect className="board-edge" x="0" y="0" width={width} height={height} rx={3 * unit} strokeWidth={0.6 * unit} />
        {blocks.map((block, index) => {
          const { x, y } = place(block.at);
          const shade = FAINT + (STRONG * (block.chance ?? 0)) / most;
          return (
            <g key={block.id}>
              <circle className="board-block" cx={x} cy={y} r={5.5 * unit} strokeWidth={0.5 * unit} fillOpacity={shade} />
              <text className="board-label" x={x} y={y + 1.9 * unit} fontSize={5.2 * unit} strokeWidth={1.4 * unit} textAnchor="middle">
                {index + 1}
              </text>
              <title>{block.text}</title>
            </g>
          );
        })}
        {findings.map((finding) => (
          <Cross key={finding.text} {...place(finding.at)} r={5 * unit} text={finding.text} />
        ))}
        {points.map((point) => {
          const { x, y } = place(point.at);
          return (
            <g key={point.id} className="board-point">
              <circle cx={x} cy={y} r={1.1 * unit} />
              {point.probe && <circle className="probe-ring" cx={x} cy={y} r={4 * unit} strokeWidth={1.3 * unit} />}
              <title>{point.text}</title>
            </g>
          );
        })}
      </svg>
      <BoardKey blocks={blocks} />
    </>
  );
}

function Cross({ x, y, r, text }: { readonly x: number; readonly y: number; readonly r: number; readonly text: string }) {
  return (
    <path className="board-finding" strokeWidth={r / 4} d={`M${x - r} ${y - r}L${x + r} ${y + r}M${x + r} ${y - r}L${x - r} ${y + r}`}>
      <title>{text}</title>
    </path>
  );
}

function BoardKey({ blocks }: { readonly blocks: readonly BoardBlock[] }) {
  return (
    <ol className="board-key">
      {blocks.map((block) => (
        <li key={block.id}>
          {block.text}
          {block.chance !== null && <span className="muted"> {chance(block.chance)}</span>}
        </li>
      ))}
    </ol>
  );
}
