import { useMemo, useState } from 'react';
import { CHARGE_ROLES, chargeRefusalWords, readChargeLog, type ChargeLog, type ColumnsSaid } from '../../../bench/logs/index.ts';
import { CHEMISTRIES, judgeCharge, type ChargeQuestion, type ChemistryId } from '../../../core/rework/index.ts';
import { splitRows } from '../format/split-rows.ts';
import { Cautions } from '../ui/cautions.tsx';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { ChargeResult } from './charge-result.tsx';
import { LogFile } from './log-file.tsx';
import { ReadAs } from './read-as.tsx';

const KINDS = [{ id: '', name: 'Say which' }, ...Object.entries(CHEMISTRIES).map(([id, { name }]) => ({ id, name }))];

/** A log of charging or emptying the cell: from the file to what it says of port, charger and cell. */
export function ChargeLogForm() {
  const [text, setText] = useState('');
  const [columns, setColumns] = useState<ColumnsSaid>({});
  const [chemistry, setChemistry] = useState('');
  const [cells, setCells] = useState('1');
  const [printed, setPrinted] = useState('');
  const [charger, setCharger] = useState('');
  const log = useMemo(() => (text === '' ? null : readChargeLog(text, splitRows, columns)), [text, columns]);
  const question: ChargeQuestion = {
    chemistry: chemistry === '' ? undefined : (chemistry as ChemistryId),
    cells: Math.max(1, Math.round(Number(cells)) || 1),
    ...milliField('ratedAh', printed),
    ...milliField('chargerA', charger),
  };
  return (
    <div className="form">
      <Cautions cautions={['lithium-cell']} />
      <p className="small">
        Stay with a cell while it charges, on a surface that cannot burn. Local rules and licensed practice come first.
      </p>
      <LogFile
        label="Log of a charge or discharge"
        onText={(read) => {
          setText(read);
          setColumns({});
        }}
      />
      {log && <ReadAs text={text} log={log} roles={CHARGE_ROLES} columns={columns} onColumns={setColumns} />}
      {log?.ok && (
        <>
          <div className="fields">
            <Pick label="Kind of cell, as its label has it" options={KINDS} value={chemistry} onChange={setChemistry} />
            <NumberText label="Cells in series" value={cells} onChange={setCells} />
            <NumberText label="Printed on it, mA h" hint="Leave empty where nothing is printed" value={printed} onChange={setPrinted} />
            <NumberText label="The charger gives, mA" hint="Leave empty where it is not known" value={charger} onChange={setCharger} />
          </div>
          <Judged log={log} question={question} />
        </>
      )}
    </div>
  );
}

function Judged({ log, question }: { readonly log: Extract<ChargeLog, { ok: true }>; readonly question: ChargeQuestion }) {
  const gaps = log.clock.filter(({ kind }) => kind === 'gap').map(({ row }) => ({ row }));
  const judged = judgeCharge(log.rows, { ...question, gaps });
  if (!judged.ok) return <p aria-live="polite">{chargeRefusalWords(judged.code)}</p>;
  return <ChargeResult rows={log.rows} judged={judged} question={question} />;
}

interface NumberTextProps {
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
}

/** A number that may be left empty. */
function NumberText({ label, hint, value, onChange }: NumberTextProps) {
  return (
    <Field label={label} hint={hint}>
      <input type="text" inputMode="decimal" value={value} onChange={(event) => onChange(event.target.value)} />
    </Field>
  );
}

/** mA or mA h as typed, in A or A h under its name; nothing where no number above nought is typed. */
function milliField(name: 'ratedAh' | 'chargerA', typed: string): Partial<ChargeQuestion> {
  const value = Number(typed.replace(',', '.'));
  return typed.trim() !== '' && value > 0 ? { [name]: value / 1000 } : {};
}
