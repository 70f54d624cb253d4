export * from './rows.ts';
export * from './belief.ts';
export * from './advice.ts';
export * from './item-file.ts';
export * from './points.ts';
export * from './places.ts';
export * from './scout.ts';
export * from './bench.ts';
export { BoardMarks } from './board-marks.ts';
export { FitsSeenView } from './fits.ts';
export { ComparedListing, CompareQuestion, CompareView, ListingToCompare } from './compare.ts';
export { LotQuestion, LotView, SellerQuestions } from './lot.ts';
export { ChoiceQuestion, PlanItem, PlanView } from './plan.ts';
export { AskingView, MarketView } from './market.ts';
export { GrowthView, PooledPointView, TeachView, ToldPlace } from './growth.ts';
export { FitLine, FitQuestion, FitView } from './fit.ts';
export { TaxView } from './tax.ts';
export { CalibrationView } from './calibration.ts';
export { LearnedBundle } from './learned-bundle.ts';
export { LearnedView } from './learned.ts';
export { ListingTextView } from './listing-text.ts';
export { BreakdownView } from './breakdown.ts';
export { FastenersView, OpeningStep, OpeningView } from './opening.ts';
export * from './model-check.ts';
export {
  BlindZone,
  ComparisonView,
  DifferenceView,
  JudgementView,
  JudgeQuestion,
  PhotoQuestion,
  ReferencesView,
  type PoseView,
} from './compared-photos.ts';
export * from './placement-import.ts';
