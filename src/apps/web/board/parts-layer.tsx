import { memo } from 'react';
import type { DrawnPart } from './drawn-part.ts';
import { toPicture, type Frame } from './frame.ts';

interface PartsLayerProps {
  readonly frame: Frame;
  readonly parts: readonly DrawnPart[];
}

/** Parts below this size are named only when one looks closer, mm. */
const SMALL_MM = 3.4;
const LABEL_MM = 1.15;
const BIG_LABEL_MM = 1.9;

/** Outlines, pads and names of the parts of one side. It changes with the board alone, so that moving and zooming draw nothing anew. */
export const PartsLayer = memo(function PartsLayer({ frame, parts }: PartsLayerProps) {
  const here = parts.filter((part) => part.side === frame.side);
  return (
    <>
      {here.map((part) => !part.isTestPoint && <Outline key={part.ref} frame={frame} part={part} />)}
      {here.flatMap((part) => part.pads.map((pad, i) => <Pad key={`${part.ref}.${pad.pin ?? `a${i}`}`} frame={frame} pad={pad} />))}
      {here.map((part) => (
        <Name key={part.ref} frame={frame} part={part} />
      ))}
    </>
  );
});

/** On the back all turns the other way round. */
export const turnOf = (frame: Frame, rotation: number): number => (frame.side === 'front' ? -rotation : rotation);

function Outline({ frame, part }: { readonly frame: Frame; readonly part: DrawnPart }) {
  const { x, y } = toPicture(frame, part);
  const { w, h } = part;
  return (
    <rect
      className="part"
      x={x - w / 2}
      y={y - h / 2}
      width={w}
      height={h}
      rx={Math.min(w, h) / 10}
      transform={`rotate(${turnOf(frame, part.rotation)} ${x} ${y})`}
    />
  );
}

function Pad({ frame, pad }: { readonly frame: Frame; readonly pad: DrawnPart['pads'][number] }) {
  const { x, y } = toPicture(frame, pad);
  return <rect className="part-pad" x={x - pad.w / 2} y={y - pad.h / 2} width={pad.w} height={pad.h} rx={0.1} />;
}

function Name({ frame, part }: { readonly frame: Frame; readonly part: DrawnPart }) {
  const { x, y } = toPicture(frame, part);
  const isSmall = Math.min(part.w, part.h) < SMALL_MM;
  const above = part.isTestPoint ? part.h : 0;
  return (
    <text
      className={isSmall ? 'part-name part-name-small' : 'part-name'}
      x={x}
      y={y - above}
      style={{ fontSize: `calc(${isSmall ? LABEL_MM : BIG_LABEL_MM}px * var(--shrink))` }}
      textAnchor="middle"
      dominantBaseline="central"
    >
      {part.ref}
    </text>
  );
}
