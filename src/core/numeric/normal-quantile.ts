import { gammaQuantile } from './incomplete-gamma.ts';

/** The value that a standard normal number stays below with chance p, 0 < p < 1: its square over two is gamma distributed with shape one half. */
export const normalQuantile = (p: number): number => Math.sign(p - 0.5) * Math.sqrt(2 * gammaQuantile(Math.abs(2 * p - 1), 0.5, 1));
