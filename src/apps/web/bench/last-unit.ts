const KEY = 'salvor.last-unit';

/** The unit that this device worked on last; null when there is none or storage is closed. */
export function lastUnit(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

/** Remembers the unit under work; null forgets it. */
export function rememberUnit(id: string | null): void {
  try {
    if (id === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, id);
  } catch {
    return;
  }
}
