export { CAUTION_WORDS } from '../../../bench/caution-words.ts';
