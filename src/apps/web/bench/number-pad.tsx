import type { MeterMode } from '../../../bench/events/index.ts';

const UNIT_KEYS: Readonly<Record<MeterMode, readonly [string, string]>> = {
  volts: ['mV', '−'],
  ohms: ['k', 'M'],
  diode: ['mV', '−'],
  amps: ['mA', '−'],
};

/** Big keys for what a meter shows, for gloves and dirty hands. */
export function NumberPad({
  mode,
  text,
  onChange,
}: {
  readonly mode: MeterMode;
  readonly text: string;
  readonly onChange: (text: string) => void;
}) {
  const [unit, second] = UNIT_KEYS[mode];
  const keys = ['7', '8', '9', '⌫', '4', '5', '6', unit, '1', '2', '3', second, '0', '.', 'OL', 'Clear'];
  return (
    <fieldset className="pad" aria-label="Number pad">
      {keys.map((key) => (
        <button key={key} type="button" aria-label={LABELS[key] ?? key} onClick={() => onChange(press(text, key))}>
          {key}
        </button>
      ))}
    </fieldset>
  );
}

const LABELS: Readonly<Record<string, string>> = { '⌫': 'Rub out the last', '.': 'Decimal point', '−': 'Minus', k: 'kilo', M: 'mega' };

/** The text after a key of the pad. */
export function press(text: string, key: string): string {
  if (key === 'Clear') return '';
  if (key === 'OL') return 'OL';
  if (key === '⌫') return text === 'OL' ? '' : text.replace(/ ?(mV|mA|.)$/u, '');
  const base = text === 'OL' ? '' : text;
  if (key === '−') return base.startsWith('−') ? base.slice(1) : `−${base}`;
  if (key === 'mV' || key === 'mA') return base.endsWith(key) ? base : `${base} ${key}`;
  return base + key;
}
