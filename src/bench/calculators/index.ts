import { DIVIDER, LED } from './circuits.ts';
import type { Calculator } from './calculator.ts';
import { PART_CODE } from './part-code.ts';
import { RUN_TIME } from './run-time.ts';
import { RESISTANCE, TRACK_CURRENT } from './tracks.ts';
import { FUSING, WIRE_GAUGE } from './wires.ts';

export { askedFields, reckonWith, type Answer, type Calculator, type Field, type Outcome } from './calculator.ts';
export { reckoningText } from './answer-text.ts';

/** Every calculator, in the order in which they are offered. */
export const CALCULATORS: readonly Calculator[] = [TRACK_CURRENT, RESISTANCE, WIRE_GAUGE, FUSING, PART_CODE, DIVIDER, LED, RUN_TIME];
