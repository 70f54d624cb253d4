export { LABEL_SHEETS, sheetOf, type LabelSheet } from './label-sheets.ts';
export { layoutLabels, type Label } from './layout-labels.ts';
export { labelsOf, type LabelsMade, type WantedLabels, type WantedNames } from './labels-of.ts';
