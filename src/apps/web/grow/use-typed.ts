import { useState, type ChangeEvent, type KeyboardEvent } from 'react';

/** A text that counts when the field is left or Enter is pressed, and shows what holds until then typed over. */
export function useTyped(held: string, onTyped: (text: string) => void) {
  const [typed, setTyped] = useState<{ readonly over: string; readonly text: string } | null>(null);
  const text = typed?.over === held ? typed.text : held;
  const settle = (): void => {
    if (text !== held) onTyped(text.trim());
    setTyped(null);
  };
  return {
    value: text,
    onChange: (event: ChangeEvent<HTMLInputElement>) => setTyped({ over: held, text: event.target.value }),
    onBlur: settle,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter') settle();
      if (event.key === 'Escape') setTyped(null);
    },
  };
}
