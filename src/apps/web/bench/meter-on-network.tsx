import { useState } from 'react';
import { askWith } from '../api/ask.ts';
import { sentenceOf } from '../api/problem-error.ts';
import type { MeterMode } from '../../../bench/events/index.ts';
import { Field } from '../ui/field.tsx';
import { meterAddress, rememberMeter } from './meter-address.ts';

interface Reading {
  readonly value: number | null;
  readonly unit: string;
  readonly instrument: string;
}

interface MeterOnNetworkProps {
  readonly mode: MeterMode;
  /** The reading as it would be typed, to be looked at before it is noted. */
  readonly onReading: (text: string) => void;
}

/** Takes the reading from a meter that speaks SCPI over TCP, at an address that the person types in. */
export function MeterOnNetwork({ mode, onReading }: MeterOnNetworkProps) {
  const [address, setAddress] = useState(meterAddress);
  const [said, setSaid] = useState('');
  const [asking, setAsking] = useState(false);
  const read = async (): Promise<void> => {
    setAsking(true);
    try {
      const { value, instrument } = await askWith<Reading>('/api/instruments/reading', { address: address.trim(), mode });
      rememberMeter(address.trim());
      onReading(value === null ? 'OL' : plain(value));
      setSaid(`Read from ${instrument}.`);
    } catch (error) {
      setSaid(sentenceOf(error));
    }
    setAsking(false);
  };
  return (
    <details className="why">
      <summary>From a meter on the network</summary>
      <Field
        label="Address of the meter"
        hint="A name or IP address, with a port where it is not 5025. The bench asks it; no output is switched"
      >
        <input
          value={address}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setAddress(event.target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            // The form around it would note what was read before.
            event.preventDefault();
            void read();
          }}
        />
      </Field>
      <button type="button" disabled={asking || address.trim() === ''} onClick={() => void read()}>
        {asking ? 'Asking …' : 'Read it'}
      </button>
      <p className="small" aria-live="polite">
        {said}
      </p>
    </details>
  );
}

/** As it would be typed: without an exponent, to six figures. */
const plain = (value: number): string => {
  const text = value.toPrecision(6);
  return text.includes('e') ? Number(text).toFixed(12).replace(/0+$/, '') : String(Number(text));
};
