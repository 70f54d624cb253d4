export { openCompareDesk, type CompareDesk, type CompareDeskParts, type DeskRefusal } from './compare-desk.ts';
export { DIFFERENCE_WORDS, FINDINGS_OF, SIDE_NAMES, TROUBLE_WORDS } from './picture-words.ts';
