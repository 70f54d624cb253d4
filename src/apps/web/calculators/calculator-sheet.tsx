import { useState } from 'react';
import { askedFields, reckonWith, type Calculator } from '../../../bench/calculators/index.ts';
import { Section } from '../ui/section.tsx';
import { AnswerCard } from './answer-card.tsx';
import { CalculatorField } from './calculator-field.tsx';
import { NetPicker } from './net-picker.tsx';
import { CalculatorPicture } from './pictures.tsx';

interface CalculatorSheetProps {
  readonly calculator: Calculator;
  /** Texts by field that the page before filled in; others are as usual. */
  readonly given: Readonly<Record<string, string>>;
}

/** One calculator: its picture, what it asks, and what it answers as one types. */
export function CalculatorSheet({ calculator, given }: CalculatorSheetProps) {
  const [texts, setTexts] = useState(given);
  const outcome = reckonWith(calculator, texts);
  const set = (id: string, text: string): void => setTexts((now) => ({ ...now, [id]: text }));
  const trouble = outcome.ok ? null : outcome;
  const shown = Object.fromEntries(calculator.fields.map(({ id, usual }) => [id, texts[id] ?? usual]));
  return (
    <Section id={calculator.id} title={calculator.name}>
      <p>{calculator.about}</p>
      <CalculatorPicture id={calculator.id} values={shown} />
      {'current_a' in shown && (
        <NetPicker
          modelId={given['model'] ?? ''}
          net={given['net'] ?? ''}
          onPick={(amps) => set('current_a', String(Number(amps.toPrecision(3))))}
        />
      )}
      <div className="fields">
        {askedFields(calculator, texts).map((field) => (
          <CalculatorField
            key={field.id}
            field={field}
            text={shown[field.id]!}
            trouble={trouble?.field === field.id ? trouble.message : undefined}
            onChange={(text) => set(field.id, text)}
          />
        ))}
      </div>
      {trouble && <p role="alert">{trouble.message}</p>}
      {outcome.ok && (
        <output className="answers">
          {outcome.answers.map((answer) => (
            <AnswerCard key={answer.label} answer={answer} />
          ))}
          <ul className="plain-list small">
            {outcome.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </output>
      )}
    </Section>
  );
}
