import type { DrawnPart } from '../board/drawn-part.ts';
import { toPicture, type Frame } from '../board/frame.ts';
import type { ShownNet } from './probing.ts';

interface NetsLayerProps {
  readonly frame: Frame;
  readonly scale: number;
  readonly parts: readonly DrawnPart[];
  readonly nets: readonly ShownNet[];
  /** Node of the net that is looked at: the others fade. */
  readonly chosen: string | null;
  readonly held: string | null;
}

const NAME_MM = 1.3;

/** Every pin of a net in its colour and dashes, with the name at the first one; and where the lead is held. */
export function NetsLayer({ frame, scale, parts, nets, chosen, held }: NetsLayerProps) {
  const byNode = new Map(nets.map((net) => [net.node, net]));
  const named = new Set<string>();
  const pads = parts.flatMap((part) => (part.side === frame.side ? part.pads : []));
  return pads.map((pad) => {
    const net = pad.net === null ? undefined : byNode.get(pad.net);
    const isHeld = held !== null && held === `${pad.ref}.${pad.pin}`;
    if (!net && !isHeld) return null;
    const { x, y } = toPicture(frame, pad);
    const isFirst = net !== undefined && !named.has(net.node);
    if (net) named.add(net.node);
    return (
      <g key={`${pad.ref}.${pad.pin}`} className={net ? netClass(net, chosen) : undefined}>
        {net && <rect className="net-ring" x={x - pad.w / 2 - 0.2} y={y - pad.h / 2 - 0.2} width={pad.w + 0.4} height={pad.h + 0.4} />}
        {isFirst && (
          <text
            className="net-name"
            x={x}
            y={y - pad.h / 2 - 0.5 * scale}
            fontSize={NAME_MM * scale}
            strokeWidth={0.3 * scale}
            textAnchor="middle"
          >
            {net.name}
          </text>
        )}
        {isHeld && <circle className="lead-held" cx={x} cy={y} r={1.4 * scale} strokeWidth={0.5 * scale} />}
      </g>
    );
  });
}

export const netClass = (net: ShownNet, chosen: string | null): string =>
  `net-look-${net.look}${chosen !== null && chosen !== net.node ? ' net-faded' : ''}`;
