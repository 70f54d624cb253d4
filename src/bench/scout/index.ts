export type * from './listing-reading.ts';
export { readListing } from './read-listing.ts';
export { BY_THE_PERSON, claimsThatCount, correctedReading, keyOfReading, type ReadingCorrection } from './correct-reading.ts';
export { LISTING_COLUMNS, listingsFromCsv, listingsToCsv, type ListingLine } from './listings-csv.ts';
export { COMPARED_COLUMNS, comparedCsv } from './compared-csv.ts';
export { listingToCompare } from './listing-to-compare.ts';
