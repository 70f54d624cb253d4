import { useState } from 'react';
import { LABEL_SHEETS } from '../../../bench/labels/label-sheets.ts';
import type { DrawerView } from '../../../bench/views/index.ts';
import { Field } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';

const SHEETS = LABEL_SHEETS.map(({ id, paper, columns, rows, widthMm, heightMm }) => ({
  id,
  name: `${paper}, ${columns * rows} labels of ${widthMm} × ${heightMm} mm`,
}));

/** Labels with codes for paper: what is scanned opens here. */
export function LabelsSection({ bags }: { readonly bags: DrawerView['bags'] }) {
  const [units, setUnits] = useState('all');
  const [areBags, setBags] = useState(true);
  const [sheet, setSheet] = useState(SHEETS[0]!.id);
  const [skip, setSkip] = useState(0);
  const [address, setAddress] = useState('');
  const full = bags.filter(({ count }) => count > 0).length;
  const items = units
    .split(/[\s,]+/)
    .filter((name) => name !== '')
    .join(',');
  const query = new URLSearchParams({
    items,
    bags: areBags ? 'all' : '',
    sheet,
    skip: String(skip),
    ...(address === '' ? {} : { address }),
  });
  const isSomething = items !== '' || (areBags && full > 0);
  return (
    <Section id="labels" title="Labels">
      <div className="form">
        <div className="fields">
          <Field label="Units and assemblies" hint="Stock numbers with commas between, such as 7, 8; or: all">
            <input value={units} maxLength={2000} onChange={(event) => setUnits(event.target.value)} />
          </Field>
          <Pick label="Sheet" options={SHEETS} value={sheet} onChange={setSheet} />
          <NumberField
            label="Labels of the first sheet that are used already"
            value={skip}
            max={200}
            onChange={(typed) => setSkip(Math.min(200, Math.round(typed)))}
          />
          <Field
            label="Address that the codes open"
            hint="Leave it empty for that of the network, or of this machine where the bench is not open to others"
          >
            <input type="url" value={address} maxLength={200} onChange={(event) => setAddress(event.target.value)} />
          </Field>
        </div>
        <label className="check-line">
          <input type="checkbox" checked={areBags} onChange={(event) => setBags(event.target.checked)} />
          Every bag that holds something ({full})
        </label>
        {isSomething ? (
          <p className="row">
            <a className="button" href={`/api/labels?${query}`} target="_blank" rel="noreferrer">
              Open the labels (PDF)
            </a>
          </p>
        ) : (
          <p className="muted">Nothing to label is chosen.</p>
        )}
        <p className="small muted">
          Print them unscaled, at 100 %, and first once on plain paper: sheets of labels differ by a millimetre.
        </p>
      </div>
    </Section>
  );
}
