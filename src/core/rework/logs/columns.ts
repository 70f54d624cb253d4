/** What a column of a log holds. */
export type Role = 'time' | 'volts' | 'amps' | 'celsius';

export interface Column {
  readonly role: Role;
  readonly index: number;
  /** As the header has it; empty without one. */
  readonly name: string;
  /** The unit that it was read in, and what it was multiplied with for SI. */
  readonly unit: string;
  readonly toSi: (value: number) => number;
  /** `header`: named there. `content`: from the numbers alone, and worth a look. `person`: said by the person. */
  readonly from: 'header' | 'content' | 'person';
}

interface Unit {
  readonly role: Role;
  readonly unit: string;
  readonly pattern: RegExp;
  readonly toSi: (value: number) => number;
}

const times = (factor: number) => (value: number) => value * factor;

/** Units as they stand in headers, most special first. */
const UNITS: readonly Unit[] = [
  { role: 'celsius', unit: '°F', pattern: /°\s*F|deg(?:rees)?\s*F\b|fahrenheit/i, toSi: (f) => ((f - 32) * 5) / 9 },
  { role: 'celsius', unit: 'K', pattern: /\[K\]|\(K\)|kelvin/, toSi: (k) => k - 273.15 },
  { role: 'celsius', unit: '°C', pattern: /°\s*C|deg(?:rees)?\s*C\b|celsius|temp/i, toSi: times(1) },
  { role: 'time', unit: 'ms', pattern: /\bms\b|millisec/i, toSi: times(1e-3) },
  { role: 'time', unit: 'min', pattern: /\bmin(?:utes?)?\b/i, toSi: times(60) },
  { role: 'time', unit: 'h', pattern: /\bh(?:ours?)?\b/i, toSi: times(3600) },
  { role: 'time', unit: 's', pattern: /\bs(?:ec(?:onds?)?)?\b|time|elapsed|date|clock|^t$/i, toSi: times(1) },
  { role: 'volts', unit: 'mV', pattern: /\bmV\b/, toSi: times(1e-3) },
  { role: 'volts', unit: 'V', pattern: /\bV\b|volt|^U$/i, toSi: times(1) },
  { role: 'amps', unit: 'mA', pattern: /\bmA\b/, toSi: times(1e-3) },
  { role: 'amps', unit: 'A', pattern: /\bA\b|\bamp|current|^I$/i, toSi: times(1) },
];

/** What is not a current though its unit begins like one. */
const OTHER = /mAh|\bAh\b|\bWh?\b|watt|power|energy|capacity|charge\b/i;

/** The columns that a header names, of the roles wanted; the first of each role counts. */
export function namedColumns(header: readonly string[], wanted: readonly Role[]): Column[] {
  const columns: Column[] = [];
  header.forEach((cell, index) => {
    const name = cell.trim();
    const unit = OTHER.test(name) ? undefined : unitOf(name);
    if (unit && wanted.includes(unit.role) && !columns.some(({ role }) => role === unit.role))
      columns.push({ role: unit.role, index, name, unit: unit.unit, toSi: unit.toSi, from: 'header' });
  });
  return columns;
}

/** "Time (min)" is of time by its first word and in minutes by its unit; a unit without a word says both. */
function unitOf(name: string): Unit | undefined {
  const word = UNITS.find(({ role, pattern }) => pattern.test(name.replace(/[([].*$/, '').trim()) && role !== undefined);
  const matching = UNITS.filter(({ pattern }) => pattern.test(name));
  return (word && matching.find(({ role }) => role === word.role)) ?? matching[0];
}

/**
 * Columns from the numbers alone, where no header names them: time is the first that hardly ever falls, temperature what
 * is left of it; of two left, volts is that with the smaller spread for its size. Undefined when that leaves a doubt.
 */
export function columnsByContent(columns: readonly (readonly number[])[], wanted: readonly Role[]): Column[] | undefined {
  const time = columns.findIndex(rises);
  const rest = columns.map((_, index) => index).filter((index) => index !== time);
  if (time < 0 || rest.length !== wanted.length - 1) return undefined;
  const column = (role: Role, index: number, unit: string): Column => ({ role, index, name: '', unit, toSi: times(1), from: 'content' });
  if (wanted.includes('celsius') && rest.length === 1) return [column('time', time, 's'), column('celsius', rest[0]!, '°C')];
  const [a, b] = rest.map((index) => ({ index, values: columns[index]! }));
  if (!a || !b) return undefined;
  const likeCell = (values: readonly number[]): boolean =>
    values.filter((value) => value > 0.8 && value < 20).length > 0.95 * values.length;
  const [volts, amps] = relativeSpread(a.values) <= relativeSpread(b.values) ? [a, b] : [b, a];
  if (!likeCell(volts.values) || (likeCell(amps.values) && relativeSpread(amps.values) < 0.3)) return undefined;
  return [column('time', time, 's'), column('volts', volts.index, 'V'), column('amps', amps.index, 'A')];
}

/** Nine steps of ten up, and none of them by falling noise. */
function rises(values: readonly number[]): boolean {
  const up = values.filter((value, i) => i > 0 && value > values[i - 1]!).length;
  return up >= 0.9 * (values.length - 1);
}

function relativeSpread(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  return mean === 0 ? Infinity : Math.sqrt(variance) / Math.abs(mean);
}
