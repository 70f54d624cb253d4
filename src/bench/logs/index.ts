export { CHARGE_ROLES, HEAT_ROLES, readChargeLog, readHeatLog, type ChargeLog, type ColumnsSaid, type HeatLog } from './read-logs.ts';
export { clockWords, guessWords, previewOf, readRefusalWords, ROLE_NAMES } from './read-words.ts';
export { alarmWords, chargeRefusalWords, milli, PHASE_WORDS } from './charge-words.ts';
export { chargeTest, verdictLines, type TestSaid } from './charge-test.ts';
export { chargeEvidence, type ChargeEvidence } from './charge-evidence.ts';
export { valueWords } from '../report/value-words.ts';
export { boundsWords, heatRefusalWords, heatSourceWords, heatTest, LIMIT_NAMES, limitWords } from './heat-test.ts';
