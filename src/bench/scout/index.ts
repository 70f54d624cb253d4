export type * from './listing-reading.ts';
export { readListing } from './read-listing.ts';
