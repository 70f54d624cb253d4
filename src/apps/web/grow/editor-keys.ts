import {
  copied,
  pasted,
  redone,
  removed,
  turnedOver,
  turnedQuarter,
  undone,
  withAllSelected,
  withBrush,
  withLook,
  type Editor,
  type EditorTool,
} from './editor.ts';

export interface Key {
  readonly key: string;
  readonly shiftKey: boolean;
  /** Ctrl, or the command key. */
  readonly withCtrl: boolean;
}

const TOOL_KEYS: Readonly<Record<string, EditorTool>> = { p: 'place', o: 'row', g: 'grid', s: 'select' };

/** What a key does on the picture; null where it does nothing there. Arrows and Enter belong to the cross. */
export function keyed(editor: Editor, { key, shiftKey, withCtrl }: Key): Editor | null {
  const name = key.toLowerCase();
  if (withCtrl) return withControl(editor, name, shiftKey);
  if (TOOL_KEYS[name]) return withBrush(editor, { tool: TOOL_KEYS[name] });
  const look = /^[1-9]$/.test(key) ? editor.recent[Number(key) - 1] : undefined;
  if (look) return withLook(editor, look);
  switch (name) {
    case 'r':
      return turnedQuarter(editor);
    case 't':
      return turnedOver(editor);
    case 'delete':
    case 'backspace':
      return removed(editor);
    case 'escape':
      return { ...editor, pending: null, selected: new Set() };
    default:
      return null;
  }
}

function withControl(editor: Editor, name: string, shiftKey: boolean): Editor | null {
  switch (name) {
    case 'z':
      return shiftKey ? redone(editor) : undone(editor);
    case 'y':
      return redone(editor);
    case 'c':
      return copied(editor);
    case 'v':
      return pasted(editor);
    case 'a':
      return withAllSelected(editor);
    default:
      return null;
  }
}
