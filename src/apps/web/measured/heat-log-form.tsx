import { useMemo, useState } from 'react';
import {
  boundsWords,
  HEAT_ROLES,
  heatRefusalWords,
  heatSourceWords,
  heatTest,
  LIMIT_NAMES,
  readHeatLog,
  type ColumnsSaid,
  type HeatLog,
} from '../../../bench/logs/index.ts';
import { ALLOYS, judgeHeat, type Alloy, type HeatVerdict } from '../../../core/rework/index.ts';
import { recordTest } from '../actions/record-test.ts';
import { useUnit } from '../bench/unit-context.ts';
import { splitRows } from '../format/split-rows.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Cautions } from '../ui/cautions.tsx';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { LogFile } from './log-file.tsx';
import { LogPlot } from './log-plot.tsx';
import { ReadAs } from './read-as.tsx';

const KINDS = [{ id: '', name: 'Say which' }, ...Object.keys(ALLOYS).map((id) => ({ id, name: id }))];

/** A log of temperatures against the limits of the solder: each passed or missed. */
export function HeatLogForm() {
  const [text, setText] = useState('');
  const [columns, setColumns] = useState<ColumnsSaid>({});
  const [alloy, setAlloy] = useState('');
  const [peak, setPeak] = useState('');
  const log = useMemo(() => (text === '' ? null : readHeatLog(text, splitRows, columns)), [text, columns]);
  const peakC = Number(peak.replace(',', '.'));
  return (
    <div className="form">
      <Cautions cautions={['hot-tool', 'fumes']} />
      <LogFile
        label="Log of temperatures"
        onText={(read) => {
          setText(read);
          setColumns({});
        }}
      />
      {log && <ReadAs text={text} log={log} roles={HEAT_ROLES} columns={columns} onColumns={setColumns} />}
      {log?.ok && (
        <>
          <div className="fields">
            <Pick label="Solder" options={KINDS} value={alloy} onChange={setAlloy} />
            <Field label="The part bears, °C" hint="From its data sheet; 245 to 260 for lead-free parts. Left empty: that of the standard">
              <input type="text" inputMode="decimal" value={peak} onChange={(event) => setPeak(event.target.value)} />
            </Field>
          </div>
          <Judged log={log} alloy={alloy === '' ? undefined : (alloy as Alloy)} peakC={peakC > 0 ? peakC : undefined} />
        </>
      )}
    </div>
  );
}

interface JudgedProps {
  readonly log: Extract<HeatLog, { ok: true }>;
  readonly alloy: Alloy | undefined;
  readonly peakC: number | undefined;
}

function Judged({ log, alloy, peakC }: JudgedProps) {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const judged = judgeHeat(log.rows, alloy, peakC);
  if (!judged.ok || alloy === undefined) return <p aria-live="polite">{judged.ok ? '' : heatRefusalWords(judged.code)}</p>;
  const points = log.rows.map(({ seconds, celsius }) => [seconds, celsius] as const);
  const most = judged.limits.find(({ id }) => id === 'peak')!;
  return (
    <div className="form">
      <p aria-live="polite">
        {judged.passed ? 'Every limit was kept.' : `${judged.limits.filter(({ passed }) => !passed).length} limits were missed.`}
      </p>
      <LogPlot
        curves={[{ name: 'Temperature', unit: '°C', points }]}
        limits={[
          { value: most.atMost!, name: `the part bears ${most.atMost} °C` },
          { value: ALLOYS[alloy].liquidusC, name: `liquidus ${ALLOYS[alloy].liquidusC} °C` },
        ]}
        words={`Hottest ${Math.round(most.value)} °C after ${Math.round(most.at ?? 0)} s.`}
      />
      <Limits judged={judged} />
      <p className="small muted">{heatSourceWords(judged, alloy)}</p>
      <button
        type="button"
        className="main"
        disabled={busy}
        onClick={() => void record(recordTest({ itemId: file.row.id, test: 'heat-log', said: heatTest(judged, alloy), minutes: 0 }))}
      >
        Note this log
      </button>
    </div>
  );
}

const Limits = ({ judged }: { readonly judged: Extract<HeatVerdict, { ok: true }> }) => (
  <TableScroll label="Limits">
    <thead>
      <tr>
        <th scope="col">Limit</th>
        <th scope="col" className="num">
          Found
        </th>
        <th scope="col">Allowed</th>
        <th scope="col">Kept</th>
      </tr>
    </thead>
    <tbody>
      {judged.limits.map((limit) => (
        <tr key={limit.id}>
          <th scope="row">{LIMIT_NAMES[limit.id]}</th>
          <td className="num">
            {Number(limit.value.toFixed(1))} {limit.unit}
          </td>
          <td>{boundsWords(limit)}</td>
          <td className={limit.passed ? 'proof-pass' : 'proof-fail'}>{limit.passed ? 'passed' : 'missed'}</td>
        </tr>
      ))}
    </tbody>
  </TableScroll>
);
