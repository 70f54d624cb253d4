import type { ModelRow } from '../../../bench/views/index.ts';
import { useModel } from '../api/queries.ts';
import { Field } from '../ui/field.tsx';
import { modelOptions } from '../ui/model-options.ts';
import { Pick } from '../ui/pick.tsx';

/** A kind of part as a model calls it, or one of one's own words. */
export interface PickedPart {
  readonly modelId: string;
  /** Empty: a part that the model does not name. */
  readonly part: string;
  readonly name: string;
}

interface PartPickerProps {
  readonly models: readonly ModelRow[];
  readonly value: PickedPart;
  readonly onChange: (part: PickedPart) => void;
}

const OTHER = { id: '', name: 'another part' };

/** Which part it is: chosen from a model, so that remedies find it. */
export function PartPicker({ models, value, onChange }: PartPickerProps) {
  const model = useModel(value.modelId === '' ? undefined : value.modelId);
  const parts = model.data?.file.parts ?? [];
  return (
    <>
      <Pick
        label="For model"
        options={modelOptions(models)}
        value={value.modelId}
        onChange={(modelId) => onChange({ modelId, part: '', name: '' })}
      />
      <Pick
        label="Part"
        options={[...parts, OTHER]}
        value={value.part}
        onChange={(part) => onChange({ ...value, part, name: parts.find((each) => each.id === part)?.name ?? '' })}
      />
      <Field label="Name">
        <input value={value.name} required maxLength={200} onChange={(event) => onChange({ ...value, name: event.target.value })} />
      </Field>
    </>
  );
}

/** The id of the part: that of the model, or made from its name. */
export function partId({ part, name }: PickedPart): string {
  if (part !== '') return part;
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
  return plain === '' ? 'part' : plain;
}
