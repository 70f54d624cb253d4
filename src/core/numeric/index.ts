export { incompleteBeta } from './incomplete-beta.ts';
export { logGamma } from './log-gamma.ts';
export { randomStream, type RandomStream } from './random.ts';
export { huberLocation, median, medianDeviation, MAD_TO_SIGMA } from './robust.ts';
export { SparseLu, type SparsePattern } from './sparse-lu.ts';
export { studentBelow, studentDensity } from './student-t.ts';
