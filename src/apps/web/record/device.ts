const KEY = 'salvor.device';

/** The name under which this device records: kept on the device, made up at its first use. */
export function deviceName(): string {
  const kept = read();
  if (kept !== null) return kept;
  const made = `${matchMedia('(pointer: coarse)').matches ? 'phone' : 'desk'}-${crypto.getRandomValues(new Uint16Array(1))[0]!.toString(36)}`;
  nameDevice(made);
  return made;
}

/** Names this device anew; false when the name has characters that a device name may not have. */
export function nameDevice(name: string): boolean {
  if (!/^[A-Za-z0-9][A-Za-z0-9_.-]{0,63}$/.test(name)) return false;
  try {
    localStorage.setItem(KEY, name);
  } catch {
    return true;
  }
  return true;
}

function read(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}
