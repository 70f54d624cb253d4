export { LABEL_SHEETS, type LabelSheet } from './label-sheets.ts';
export { layoutLabels, type Label } from './layout-labels.ts';
export { labelsOf, type LabelsMade } from './labels-of.ts';
