import { brand, type Branded } from './brand.ts';

export type Volt = Branded<number, 'V'>;
export type Ohm = Branded<number, 'Ω'>;
export type Ampere = Branded<number, 'A'>;
export type Second = Branded<number, 's'>;
export type BoardMm = Branded<number, 'board mm'>;
export type PhotoPx = Branded<number, 'photo px'>;

export const volts = brand('V');
export const ohms = brand('Ω');
export const amperes = brand('A');
export const seconds = brand('s');
export const boardMm = brand('board mm');
export const photoPx = brand('photo px');

/** Seconds in so many minutes. */
export const minutes = (count: number): Second => seconds(count * 60);
