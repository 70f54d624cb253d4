import { useState } from 'react';

export type Look = 'system' | 'light' | 'dark';
const KEY = 'salvor.look';

/** The chosen look, and how to choose: kept on this device, applied before the first paint by `theme.js`. */
export function useLook(): readonly [Look, (look: Look) => void] {
  const [look, setLook] = useState<Look>(() => {
    const set = document.documentElement.dataset['look'];
    return set === 'light' || set === 'dark' ? set : 'system';
  });
  const choose = (next: Look): void => {
    setLook(next);
    if (next === 'system') delete document.documentElement.dataset['look'];
    else document.documentElement.dataset['look'] = next;
    try {
      localStorage.setItem(KEY, next);
    } catch {
      return;
    }
  };
  return [look, choose];
}
