import type { Model } from '../../../bench/models/index.ts';
import type { ModelRow } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { table } from './table.ts';

/** All models, with how much is known of each. */
export const modelListLines = (models: readonly ModelRow[]): string[] => [
  ...table(
    ['model', 'name', 'level', 'units', 'points'],
    models.map((model) => [model.id, model.name, `${model.level}`, `${model.units}`, `${model.referenced_points} of ${model.points}`]),
    [2, 3],
  ),
  'salvor models MODEL shows the names that it uses.',
];

/** The names of one model, as the commands take them. */
export function modelLines({ file }: Model): string[] {
  return [
    `${file.name} (${file.id}${file.revision ? `, ${file.revision}` : ''}), knowledge level ${file.level}`,
    ...(file.about ? [file.about.trim()] : []),
    `Working ${moneyText(file.prices.working, file.currency)}, for parts ${moneyText(file.prices.for_parts, file.currency)}`,
    ...section('Functions to try', file.functions),
    ...section('Places to look at', file.blocks),
    ...section('Points to measure', file.points),
    ...section('Accessories to try with', file.accessories),
    ...section('Remedies', file.remedies),
    ...section('Slots', file.slots),
    ...section('Parts', file.parts),
  ];
}

const section = (title: string, named: readonly { readonly id: string; readonly name: string }[]): string[] =>
  named.length === 0
    ? []
    : [
        title,
        ...table(
          ['', ''],
          named.map(({ id, name }) => [`  ${id}`, name]),
        ).slice(1),
      ];
