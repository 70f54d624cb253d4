const KEY = 'salvor.meter';

/** The address of the meter that was read last on this device; empty where there is none. */
export function meterAddress(): string {
  try {
    return localStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
}

/** Keeps the address for the next reading, where the browser keeps anything. */
export function rememberMeter(address: string): void {
  try {
    localStorage.setItem(KEY, address);
  } catch {
    return;
  }
}
