import { useState } from 'react';
import type { Region } from '../../../bench/events/index.ts';
import type { BoardPad } from '../../../bench/models/pads.ts';
import { LookAnswerForm } from '../bench/look-answer-form.tsx';
import { useUnit } from '../bench/unit-context.ts';
import { PartPick } from '../board/part-pick.tsx';
import type { Hit } from '../board/drawn-part.ts';
import { Pick } from '../ui/pick.tsx';

interface PinRangePanelProps {
  readonly side: 'front' | 'back';
  readonly close: () => void;
}

/** What is seen along pins. */
const ALONG_PINS = ['bridged', 'dry-joint', 'corrosion', 'residue', 'track-damaged'];
/** Room around the pads, mm. */
const ROOM_MM = 0.3;

/** Something that is seen along some pins of one part. */
export function PinRangePanel({ side, close }: PinRangePanelProps) {
  const { parts } = useUnit();
  const [hit, setHit] = useState<Hit | null>(null);
  const many = parts.filter((part) => part.side === side && pinsOf(part.pads).length > 2);
  return (
    <section className="spot" aria-label="Some pins of a part">
      <div className="spot-head">
        <h3>Some pins of a part</h3>
        <button type="button" className="quiet" onClick={close}>
          Leave it
        </button>
      </div>
      <PartPick parts={many} chosen={hit} choose={setHit} />
      {hit && <PinsOf key={hit.part.ref} hit={hit} side={side} close={close} />}
    </section>
  );
}

type NumberedPad = BoardPad & { readonly pin: number };

const pinsOf = (pads: readonly BoardPad[]): NumberedPad[] =>
  pads.filter((pad): pad is NumberedPad => pad.pin !== null).toSorted((a, b) => a.pin - b.pin);

function PinsOf({ hit: { part }, side, close }: PinRangePanelProps & { readonly hit: Hit }) {
  const pins = pinsOf(part.pads);
  const [from, setFrom] = useState(pins[0]!.pin);
  const [to, setTo] = useState(pins.at(-1)!.pin);
  const [first, last] = [Math.min(from, to), Math.max(from, to)];
  const options = pins.map(({ pin }) => ({ id: String(pin), name: `Pin ${pin}` }));
  const chosen = pins.filter(({ pin }) => pin >= first && pin <= last);
  const words = first === last ? `pin ${first}` : `pins ${first} to ${last}`;
  return (
    <>
      <div className="fields">
        <Pick label="From" options={options} value={String(from)} onChange={(pin) => setFrom(Number(pin))} />
        <Pick label="To" options={options} value={String(to)} onChange={(pin) => setTo(Number(pin))} />
      </div>
      <LookAnswerForm
        target={first === last ? `${part.ref}.${first}` : part.ref}
        placeName={`${part.ref}, ${words}`}
        usualMinutes={1}
        stageNeeded="board-out"
        likely={ALONG_PINS}
        region={{ side, polygon: around(chosen) }}
        text={words}
        whenNoted={close}
      />
    </>
  );
}

function around(pads: readonly BoardPad[]): Region['polygon'] {
  const left = Math.min(...pads.map(({ x, w }) => x - w / 2)) - ROOM_MM;
  const right = Math.max(...pads.map(({ x, w }) => x + w / 2)) + ROOM_MM;
  const below = Math.min(...pads.map(({ y, h }) => y - h / 2)) - ROOM_MM;
  const above = Math.max(...pads.map(({ y, h }) => y + h / 2)) + ROOM_MM;
  const corners: Region['polygon'] = [
    [left, below],
    [right, below],
    [right, above],
    [left, above],
  ];
  return corners.map(([x, y]) => [Math.round(x * 10) / 10, Math.round(y * 10) / 10]);
}
