export { FitError } from './fit-error.ts';
export * from './pattern.ts';
export { placed, mirrored } from './turn.ts';
export { LIMITS, BENDABLE_MM, type Answer, type FitAnswer, type PadFit, type HoleFit, type Reason, type Ask } from './answer.ts';
export { fitPart } from './fit-part.ts';
export { GOALS, LEVELS, familyOf, levelOf, type Family, type FilletGoal, type Fillets, type Level } from './goals.ts';
export { landSize, filletsOn, onGrid, type FootDrawing, type LandSize } from './land-size.ts';
export { chipSizes, chipMm, type ChipSize } from './chip-size.ts';
export { readKicadMod, type ReadPattern } from './read/read-kicad-mod.ts';
