import { counted } from '../format/number.ts';
import { Fold } from '../ui/fold.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { padsOfPart, type EditorPart } from './editor-part.ts';
import { turnedOver, withBrush, withSelection, type Editor } from './editor.ts';
import { kindOf } from './part-kinds.ts';

interface PartListProps {
  readonly editor: Editor;
  readonly onChange: (editor: Editor) => void;
}

/** All that is marked, as words: the same as the picture, for those who do not see it, and to find a part by its name. */
export function PartList({ editor, onChange }: PartListProps) {
  const parts = [...editor.parts.values()].sort((a, b) => a.ref.localeCompare(b.ref, 'en', { numeric: true }));
  const select = ({ ref, side }: EditorPart): void => {
    const seen = side === editor.side ? editor : turnedOver(editor);
    onChange(withSelection(withBrush(seen, { tool: 'select' }), ref));
  };
  return (
    <Fold title={`All that is marked: ${counted(parts.length, 'part')}`}>
      {parts.length > 0 && (
        <TableScroll label="Marked parts">
          <thead>
            <tr>
              <th scope="col">Reference</th>
              <th scope="col">What</th>
              <th scope="col">Value</th>
              <th scope="col">Package or pins</th>
              <th scope="col">Side</th>
              <th scope="col">Right, up (mm)</th>
            </tr>
          </thead>
          <tbody>
            {parts.map((part) => (
              <tr key={part.ref}>
                <th scope="row">
                  <button type="button" aria-pressed={editor.selected.has(part.ref)} onClick={() => select(part)}>
                    {part.ref}
                  </button>
                </th>
                <td>{kindOf(part.kind).name}</td>
                <td>{part.value}</td>
                <td>{part.pins.length === 0 ? part.package : counted(padsOfPart(part).length, 'pin')}</td>
                <td>{part.side}</td>
                <td>
                  {part.x.toFixed(1)}, {part.y.toFixed(1)}
                  {part.rotation === 0 ? '' : `, ${part.rotation}°`}
                </td>
              </tr>
            ))}
          </tbody>
        </TableScroll>
      )}
    </Fold>
  );
}
