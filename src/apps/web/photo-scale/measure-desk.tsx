import { useState } from 'react';
import type { BoardSide, Point } from '../../../core/vision/index.ts';
import { PhotoPane } from '../eyes/photo-pane.tsx';
import { useImageSize } from '../eyes/use-image-size.ts';
import { Chips } from '../ui/chips.tsx';
import { Section } from '../ui/section.tsx';
import { LayForm } from './lay-form.tsx';
import { MeasuredAnswer } from './measured-answer.tsx';
import { MarkCrosses } from './mark-crosses.tsx';
import { useLaying } from './use-laying.ts';

interface MeasureDeskProps {
  readonly url: string;
  /** The side that the photo is said to show. */
  readonly seen: BoardSide;
}

const TASKS = [
  { value: 'lay', label: 'Mark known places' },
  { value: 'measure', label: 'Measure' },
] as const;
type Task = (typeof TASKS)[number]['value'];

/** One photo: known places are marked on it, then distances are taken from it. */
export function MeasureDesk({ url, seen }: MeasureDeskProps) {
  const size = useImageSize(url);
  const laying = useLaying(seen);
  const [task, setTask] = useState<Task>('lay');
  const [ends, setEnds] = useState<readonly Point[]>([]);
  const { place } = laying;
  if (!size) return <output className="waiting">Opening the photo …</output>;
  const tap = (at: Point): void => {
    if (task === 'lay') laying.mark(at);
    else setEnds(ends.length === 2 ? [at] : [...ends, at]);
  };
  return (
    <Section id="measure-desk" title="On the photo">
      <Chips legend="What a tap does" options={TASKS} value={task} onChange={setTask} />
      <PhotoPane
        frame={{ ...size, side: 'front' }}
        name="Photo to measure on"
        title={`The photo with ${laying.marks.length} known places and ${ends.length} ends marked`}
        pictures={[{ url, share: 1 }]}
        onTap={({ x, y }) => tap([x, y])}
        renderMarks={(unit) => <MarkCrosses marks={laying.marks} ends={ends} unit={unit} />}
      />
      {task === 'lay' ? <LayForm laying={laying} /> : <MeasuredAnswer place={place} side={laying.side} ends={ends} onEnds={setEnds} />}
    </Section>
  );
}
