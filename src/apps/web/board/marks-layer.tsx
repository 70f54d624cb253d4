import type { Region } from '../../../bench/events/index.ts';
import type { DrawnPart } from './drawn-part.ts';
import { toPicture, type Frame, type Place } from './frame.ts';
import { turnOf } from './parts-layer.tsx';

/** A part that is likelier at fault than most. */
export interface LikelyPart {
  readonly ref: string;
  /** From 0 to 1, beside the likeliest. */
  readonly shade: number;
}

/** Where a lead goes. */
export interface LeadMark {
  readonly lead: 'red' | 'black';
  /** "C25 pin 1". */
  readonly text: string;
  readonly at: Place;
  readonly side: 'front' | 'back';
}

/** What was seen, at a place or over an area. */
export interface SeenMark {
  readonly id: string;
  readonly text: string;
  readonly at: Place | null;
  readonly side: 'front' | 'back' | 'both';
  readonly region: Region | null;
}

interface OfBoard {
  readonly frame: Frame;
  /** Of marks that keep their size on the screen: mm for what is 1 mm on the whole board. */
  readonly scale: number;
}

export function LikelyLayer({
  frame,
  parts,
  likely,
}: Omit<OfBoard, 'scale'> & { parts: readonly DrawnPart[]; likely: readonly LikelyPart[] }) {
  const byRef = new Map(likely.map(({ ref, shade }) => [ref, shade]));
  return parts.map((part) => {
    const shade = part.side === frame.side ? byRef.get(part.ref) : undefined;
    if (shade === undefined) return null;
    const { x, y } = toPicture(frame, part);
    return (
      <rect
        key={part.ref}
        className="part-likely"
        fillOpacity={shade}
        x={x - part.w / 2}
        y={y - part.h / 2}
        width={part.w}
        height={part.h}
        transform={`rotate(${turnOf(frame, part.rotation)} ${x} ${y})`}
      />
    );
  });
}

/** All pads of a net. */
export function NetLayer({ frame, parts, net }: Omit<OfBoard, 'scale'> & { parts: readonly DrawnPart[]; net: string }) {
  const pads = parts.flatMap((part) => (part.side === frame.side ? part.pads.filter((pad) => pad.net === net) : []));
  return pads.map((pad) => {
    const { x, y } = toPicture(frame, pad);
    return (
      <rect
        key={`${pad.ref}.${pad.pin}`}
        className="net-pad"
        x={x - pad.w / 2 - 0.15}
        y={y - pad.h / 2 - 0.15}
        width={pad.w + 0.3}
        height={pad.h + 0.3}
      />
    );
  });
}

export function SeenLayer({ frame, scale, seen }: OfBoard & { readonly seen: readonly SeenMark[] }) {
  return seen.map(({ id, text, at, side, region }) => {
    if (region) return region.side === frame.side && <RegionShape key={id} frame={frame} polygon={region.polygon} title={text} />;
    if (!at || (side !== 'both' && side !== frame.side)) return null;
    const { x, y } = toPicture(frame, at);
    const r = 1.6 * scale;
    return (
      <path
        key={id}
        className="board-finding"
        strokeWidth={0.5 * scale}
        d={`M${x - r} ${y - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}`}
      >
        <title>{text}</title>
      </path>
    );
  });
}

export function RegionShape({
  frame,
  polygon,
  title,
  isDraft = false,
}: {
  readonly frame: Frame;
  readonly polygon: Region['polygon'];
  readonly title: string;
  readonly isDraft?: boolean;
}) {
  const points = polygon.map(([x, y]) => toPicture(frame, { x, y })).map(({ x, y }) => `${x},${y}`);
  return (
    <polygon className={isDraft ? 'board-region board-region-draft' : 'board-region'} points={points.join(' ')}>
      <title>{title}</title>
    </polygon>
  );
}

/** This near to the edge of the board a name goes to the inside, mm. */
const NEAR_EDGE = 7;

/** The rings of the leads with their names, beside each other where they are close. */
export function LeadsLayer({ frame, scale, leads }: OfBoard & { readonly leads: readonly LeadMark[] }) {
  const here = leads.filter(({ side }) => side === frame.side);
  const highest = Math.min(...here.map(({ at }) => toPicture(frame, at).y));
  return here.map((mark) => {
    const { x, y } = toPicture(frame, mark.at);
    // The upper one has its name above, the lower one below, so that neither covers the other.
    const isDown = here.length > 1 ? y > highest : y < NEAR_EDGE * scale;
    const text = `${mark.lead === 'red' ? 'Red' : 'Black'} ${mark.text}`;
    const size = 2 * scale;
    const w = text.length * size * 0.56 + size;
    const left = Math.min(Math.max(x - w / 2, 0), frame.width - w);
    const top = isDown ? y + 3 * scale : y - 3 * scale - size * 1.6;
    return (
      <g key={mark.lead} className={`lead lead-${mark.lead}`}>
        <circle className="lead-ring" cx={x} cy={y} r={1.9 * scale} strokeWidth={0.7 * scale} />
        <path
          className="lead-line"
          strokeWidth={0.4 * scale}
          d={`M${x} ${isDown ? y + 1.9 * scale : y - 1.9 * scale}V${isDown ? top : top + size * 1.6}`}
        />
        <rect className="lead-tag" x={left} y={top} width={w} height={size * 1.6} rx={0.5 * scale} />
        <text className="lead-text" x={left + w / 2} y={top + size * 1.15} fontSize={size} textAnchor="middle">
          {text}
        </text>
      </g>
    );
  });
}

interface WorkLayerProps extends OfBoard {
  readonly parts: readonly DrawnPart[];
  readonly work: readonly { readonly ref: string }[];
}

export function WorkLayer({ frame, scale, parts, work }: WorkLayerProps) {
  const refs = new Set(work.map(({ ref }) => ref));
  return parts
    .filter(({ ref }) => refs.has(ref))
    .map((part) => <FramedPart key={part.ref} frame={frame} scale={scale} part={part} pin={null} className="part-work" />);
}

export const SelectedLayer = (props: Omit<FramedPartProps, 'className'>) => <FramedPart {...props} className="part-chosen" />;

interface FramedPartProps extends OfBoard {
  readonly part: DrawnPart;
  readonly pin: number | null;
  readonly className: string;
}

function FramedPart({ frame, scale, part, pin, className }: FramedPartProps) {
  if (part.side !== frame.side) return null;
  const pad = part.pads.find((each) => each.pin === pin && pin !== null);
  const at = toPicture(frame, pad ?? part);
  const [w, h] = pad ? [pad.w, pad.h] : [part.w, part.h];
  const room = 0.5 * scale;
  return (
    <rect
      className={className}
      strokeWidth={0.5 * scale}
      x={at.x - w / 2 - room}
      y={at.y - h / 2 - room}
      width={w + 2 * room}
      height={h + 2 * room}
      transform={pad ? undefined : `rotate(${turnOf(frame, part.rotation)} ${at.x} ${at.y})`}
    />
  );
}
