export { GRADES, type Criterion, type CriterionId, type Grade, type Scale } from './scale.ts';
export { MARKS, SCALE_1 } from './scale-1.ts';
export { gradeByScale, type CriterionGrade, type Judged, type ScaleGrade } from './grade-by-scale.ts';
export { GRADE_MEANS } from './grade-words.ts';
export { criteriaFound } from './criteria-found.ts';
