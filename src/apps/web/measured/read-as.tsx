import { guessWords, previewOf, readRefusalWords, clockWords, ROLE_NAMES, type ColumnsSaid } from '../../../bench/logs/index.ts';
import type { ReadLog, Role } from '../../../core/rework/index.ts';
import { splitRows } from '../format/split-rows.ts';
import { Pick } from '../ui/pick.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';

interface ReadAsProps<K extends Role> {
  readonly text: string;
  readonly log: ReadLog<K>;
  readonly roles: readonly K[];
  readonly columns: ColumnsSaid;
  readonly onColumns: (columns: ColumnsSaid) => void;
}

/** How a log was read, its first rows, and the columns to be put right; why not, where it was not read. */
export function ReadAs<K extends Role>({ text, log, roles, columns, onColumns }: ReadAsProps<K>) {
  const { guess } = log;
  return (
    <div className="form">
      {!log.ok && (
        <p role="alert" className="trouble">
          {readRefusalWords(log.code, log.detail)}
        </p>
      )}
      {guess && (
        <details className="why" open={!log.ok || Object.keys(columns).length > 0}>
          <summary>How it was read</summary>
          <ul>
            {guessWords(guess).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <Preview text={text} log={log} roles={roles} columns={columns} onColumns={onColumns} />
        </details>
      )}
      {log.ok && log.clock.length > 0 && (
        <ul aria-label="What was odd about its clock" className="odd lines">
          {log.clock.map((note) => (
            <li key={note.row}>{clockWords(note)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Preview<K extends Role>({ text, log: { guess }, roles, columns, onColumns }: ReadAsProps<K>) {
  const { names, rows } = previewOf(text, guess!, splitRows);
  const placeOf = (role: Role): number | undefined => columns[role] ?? guess!.columns.find((column) => column.role === role)?.index;
  const options = [{ id: '', name: 'say which' }, ...names.map((name, i) => ({ id: String(i), name: `${i + 1}: ${name}` }))];
  const put = (role: Role, id: string): void => {
    const known = Object.fromEntries(roles.flatMap((each) => (placeOf(each) === undefined ? [] : [[each, placeOf(each)]]))) as ColumnsSaid;
    if (id !== '') onColumns({ ...known, [role]: Number(id) });
  };
  return (
    <>
      <div className="fields">
        {roles.map((role) => (
          <Pick
            key={role}
            label={ROLE_NAMES[role]}
            options={options}
            value={String(placeOf(role) ?? '')}
            onChange={(id) => put(role, id)}
          />
        ))}
      </div>
      <TableScroll label="First rows">
        <thead>
          <tr>
            {names.map((name, i) => (
              <th key={i} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, i) => (
            <tr key={i}>
              {cells.map((cell, j) => (
                <td key={j}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </TableScroll>
    </>
  );
}
