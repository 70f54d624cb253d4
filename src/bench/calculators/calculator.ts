import { ReworkError, type Reckoning } from '../../core/rework/index.ts';

interface FieldBase {
  /** Snake case with the unit in it, as an option of the command takes it with dashes. */
  readonly id: string;
  readonly label: string;
  /** What stands there at first. */
  readonly usual: string;
  /** Asked only while that field has that value. */
  readonly when?: readonly [field: string, value: string];
}

/** What a calculator asks for. */
export type Field =
  | (FieldBase & { readonly kind: 'number'; readonly min?: number; readonly max?: number })
  | (FieldBase & { readonly kind: 'choice'; readonly options: readonly { readonly value: string; readonly label: string }[] })
  | (FieldBase & { readonly kind: 'text' });

export interface Answer {
  readonly label: string;
  readonly reckoning: Reckoning;
  /** What it comes to in words, where the number alone does not say it: "AWG 30". */
  readonly said?: string;
}

export type Outcome =
  | { readonly ok: true; readonly answers: readonly Answer[]; readonly notes: readonly string[] }
  | { readonly ok: false; readonly field: string; readonly message: string };

/** The values of the fields by id: numbers of number fields, else the text. */
export type Values = { number(id: string): number; text(id: string): string };

export interface Calculator {
  readonly id: string;
  readonly name: string;
  /** What it is good for, in one sentence. */
  readonly about: string;
  readonly fields: readonly Field[];
  readonly reckon: (values: Values) => Outcome;
}

export const refused = (field: string, message: string): Outcome => ({ ok: false, field, message });
export const answered = (answers: readonly Answer[], ...notes: readonly string[]): Outcome => ({ ok: true, answers, notes });

/** A calculator at the given texts; what is left out is as usual. A text that does not fit its field, or a number out of reach, is said with its field. */
export function reckonWith(calculator: Calculator, given: Readonly<Record<string, string | undefined>>): Outcome {
  const texts = new Map(calculator.fields.map(({ id, usual }) => [id, (given[id] ?? usual).trim()]));
  const numbers = new Map<string, number>();
  for (const field of calculator.fields) {
    const text = texts.get(field.id)!;
    if (field.kind === 'choice' && !field.options.some(({ value }) => value === text))
      return refused(field.id, `${field.label} is one of ${field.options.map(({ value }) => value).join(', ')}.`);
    if (field.kind !== 'number') continue;
    const value = text === '' ? Number.NaN : Number(text.replace(',', '.'));
    const { min = Number.MIN_VALUE, max = Infinity } = field;
    if (!(value >= min && value <= max)) return refused(field.id, `${field.label} must be a number ${rangeWords(field)}.`);
    numbers.set(field.id, value);
  }
  try {
    return calculator.reckon({ number: (id) => numbers.get(id)!, text: (id) => texts.get(id)! });
  } catch (error) {
    if (error instanceof ReworkError) return refused('', `${error.message}.`);
    throw error;
  }
}

function rangeWords({ min, max }: Extract<Field, { kind: 'number' }>): string {
  const from = min === undefined ? 'above 0' : `from ${min}`;
  return max === undefined ? from : `${from} to ${max}`;
}

/** The fields that are asked at the given texts. */
export const askedFields = ({ fields }: Calculator, given: Readonly<Record<string, string | undefined>>): readonly Field[] =>
  fields.filter(({ when }) => !when || (given[when[0]] ?? fields.find(({ id }) => id === when[0])!.usual) === when[1]);

/** The same fields, asked only while another has a value. */
export const onlyWhen = (field: string, value: string, fields: readonly Field[]): Field[] =>
  fields.map((each) => ({ ...each, when: [field, value] }));

/** A number field. */
export const numberField = (
  id: string,
  label: string,
  usual: number,
  range: { readonly min?: number; readonly max?: number } = {},
): Field => ({ kind: 'number', id, label, usual: String(usual), ...range });

/** A field of a few choices; the first is usual. */
export const choiceField = (id: string, label: string, options: Readonly<Record<string, string>>): Field => ({
  kind: 'choice',
  id,
  label,
  usual: Object.keys(options)[0]!,
  options: Object.entries(options).map(([value, text]) => ({ value, label: text })),
});
