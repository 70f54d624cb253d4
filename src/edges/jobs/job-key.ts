import { createHash } from 'node:crypto';
import { deserialize, serialize } from 'node:v8';

/** Plain data as text, exactly: also what JSON has no word for, such as infinity. */
export const packed = (value: unknown): string => serialize(value).toString('base64');
export const unpacked = (text: string): unknown => deserialize(Buffer.from(text, 'base64'));

/** The same id for the same job: a UUID of version 8 (RFC 9562, section 5.8) from the SHA-256 of its name and data. */
export function jobId(name: string, data: string): string {
  const hex = createHash('sha256').update(`${name}\n${data}`).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}
