export { listingText, PLACES } from './listing-text.ts';
