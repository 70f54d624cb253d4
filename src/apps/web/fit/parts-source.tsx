import { useState } from 'react';
import type { PartsRead } from '../../../bench/fit/index.ts';
import type { CsvLine } from '../../../bench/csv/csv-table.ts';
import type { DrawerView } from '../../../bench/views/index.ts';
import { csvLines } from '../format/csv-lines.ts';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { DrawingForm } from './drawing-form.tsx';
import { PATTERN_FILES, readPatterns, type NamedPattern } from './named-pattern.ts';
import { PhotoDesk } from './photo-desk.tsx';
import { Troubles } from './troubles.tsx';

interface PartsSourceProps {
  readonly parts: readonly NamedPattern[];
  readonly bags: DrawerView['bags'];
  readonly isDrawer: boolean;
  readonly list: PartsRead;
  readonly onParts: (parts: readonly NamedPattern[]) => void;
  readonly onDrawer: (isDrawer: boolean) => void;
  readonly onList: (lines: readonly CsvLine[]) => void;
}

/** Parts that may go there: from files, a drawing, a photo, the drawer, and a supplier's list. */
export function PartsSource({ parts, bags, isDrawer, list, onParts, onDrawer, onList }: PartsSourceProps) {
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const take = async (files: FileList | null): Promise<void> => {
    const { read, troubles: found } = await readPatterns(files);
    setTroubles(found);
    onParts(read);
  };
  const add = (part: NamedPattern): void => onParts([...parts.filter(({ name }) => name !== part.name), part]);
  return (
    <>
      <Field label="Parts that may go there" hint="One file or several, of the same kinds">
        <input type="file" multiple accept={PATTERN_FILES} onChange={(event) => void take(event.target.files)} />
      </Field>
      <Troubles troubles={troubles} />
      <Fold title="Type in the numbers of a part’s drawing">
        <DrawingForm onPattern={add} />
      </Fold>
      <Fold title="Measure a part on a photo">
        <PhotoDesk isPlace={false} onPattern={add} />
      </Fold>
      <DrawerLine bags={bags} isDrawer={isDrawer} onDrawer={onDrawer} />
      <Fold title="Look through a supplier’s list">
        <ListForm list={list} onList={onList} />
      </Fold>
    </>
  );
}

function DrawerLine({ bags, isDrawer, onDrawer }: Pick<PartsSourceProps, 'bags' | 'isDrawer' | 'onDrawer'>) {
  const known = bags.filter(({ pattern, count }) => pattern !== null && count > 0).length;
  return (
    <div>
      <label className="check-line">
        <input type="checkbox" checked={isDrawer} onChange={(event) => onDrawer(event.target.checked)} />
        Look through the drawer
      </label>
      <p className="small muted">
        Terminals are on file of {known} of {bags.length} bags. Of the others nothing can be said: lay a part over a place once, and keep
        its terminals with its bag.
      </p>
    </div>
  );
}

function ListForm({ list, onList }: Pick<PartsSourceProps, 'list' | 'onList'>) {
  const [text, setText] = useState('');
  const use = (typed: string): void => {
    setText(typed);
    onList(typed.trim() === '' ? [] : csvLines(typed));
  };
  return (
    <div className="form">
      <Field label="File of the list" hint="CSV: a line a part with the numbers of its drawing, or a line a pad">
        <input
          type="file"
          accept=".csv,text/csv,text/plain"
          onChange={async (event) => use((await event.target.files?.[0]?.text()) ?? '')}
        />
      </Field>
      <Field label="Or paste it">
        <textarea value={text} rows={4} onChange={(event) => use(event.target.value)} />
      </Field>
      <output className="small muted">{list.parts.length} parts read.</output>
      <Troubles troubles={list.problems.map(({ line, field, message, next }) => `Left out: line ${line}, ${field} ${message}. ${next}`)} />
    </div>
  );
}
