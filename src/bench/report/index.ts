export { conditionReport } from './condition-report.ts';
export { unitStory, type StoryChoices, type StoryLine, type StoryView } from './unit-story.ts';
export type { ReportPhoto, ReportView } from './report-view.ts';
