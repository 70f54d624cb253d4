import { useState } from 'react';
import type { Hit } from '../board/drawn-part.ts';
import { usePoints } from '../api/queries.ts';
import { Fold } from '../ui/fold.tsx';
import { Pick } from '../ui/pick.tsx';
import { nameIn } from './answer-form.ts';
import { LookAnswerForm } from './look-answer-form.tsx';
import { MeasureAnswerForm } from './measure-answer-form.tsx';
import { netWords } from '../board/net-words.ts';
import { pointWords } from './point-words.ts';
import { useUnit } from './unit-context.ts';

/** The part that was pointed at, and the forms for what is seen there and measured at its pins. */
export function SpotPanel({ spot, close }: { readonly spot: Hit; readonly close: () => void }) {
  const { model } = useUnit();
  const { part, pin } = spot;
  const title = part.value === '' ? part.ref : `${part.ref}, ${part.value}`;
  const likely = model.faults.filter((fault) => fault.block === part.block).flatMap((fault) => Object.keys(fault.seen));
  return (
    <section className="spot" aria-label={`Chosen: ${title}`}>
      <div className="spot-head">
        <h3>
          {title} <span className="small muted">{nameIn(model.blocks, part.block)}</span>
        </h3>
        <button type="button" className="quiet" onClick={close}>
          Let go
        </button>
      </div>
      <Fold title="Note what you see here" open={pin === null}>
        <LookAnswerForm target={part.ref} placeName={title} usualMinutes={1} stageNeeded="board-out" likely={likely} />
      </Fold>
      <Fold title="Measure here" open={pin !== null}>
        <MeasureAtPart spot={spot} />
      </Fold>
    </section>
  );
}

function MeasureAtPart({ spot: { part, pin } }: { readonly spot: Hit }) {
  const { file } = useUnit();
  const points = usePoints(file.model.id);
  const pins = part.pads.filter((pad) => pad.pin !== null);
  const [picked, setPicked] = useState(String(pin ?? pins[0]?.pin ?? ''));
  const net = pins.find((pad) => String(pad.pin) === picked)?.net ?? null;
  const here = (points.data ?? []).filter(({ red, black }) => net !== null && (red === net || (black === net && red === '0')));
  return (
    <div className="form">
      {pins.length > 1 && (
        <Pick
          label="Pin"
          value={picked}
          onChange={setPicked}
          options={pins.map((pad) => ({
            id: String(pad.pin),
            name: `${pad.pin}: ${pad.net === null ? 'joined to nothing' : netWords(pad.net)}`,
          }))}
        />
      )}
      {here.length === 0 ? (
        <p className="small muted">
          {points.isPending
            ? 'Asking the bench …'
            : `Nothing is known of ${net === null ? 'a pin that is joined to nothing' : netWords(net)} by itself.`}
        </p>
      ) : (
        <PointsHere key={picked} points={here} />
      )}
    </div>
  );
}

function PointsHere({ points }: { readonly points: NonNullable<ReturnType<typeof usePoints>['data']> }) {
  const [picked, setPicked] = useState(points[0]!.id);
  const point = points.find(({ id }) => id === picked) ?? points[0]!;
  return (
    <>
      {points.length > 1 && (
        <Pick
          label="What to measure"
          value={point.id}
          onChange={setPicked}
          options={points.map((each) => ({ id: each.id, name: pointWords(each) }))}
        />
      )}
      <MeasureAnswerForm key={point.id} point={point} usualMinutes={1} />
    </>
  );
}
