export { openBucketPhotoStore, openPhotoStore } from './photo-store.ts';
export { bucketIn, type Bucket } from './photo-objects.ts';
export { openOutlineFinder } from './outline-finder.ts';
export { openPhotoComparer } from './photo-comparer.ts';
export { openComparisonShelf } from './comparison-shelf.ts';
export { COMPARED_PX } from './compare-photos.ts';
