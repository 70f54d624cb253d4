export { conditionReport } from './condition-report.ts';
export { beforeAndAfter } from './photos-around-work.ts';
export { PRINTED_CAPACITY, TEST_NAMES } from './test-names.ts';
export { valueWords } from './value-words.ts';
export type { PhotosAroundWork, ReportGrade, ReportPhoto, ReportView } from './report-view.ts';
export { unitStory, type StoryChoices, type StoryLine, type StoryView } from './unit-story.ts';
