export { openBucketPhotoStore, openPhotoStore } from './photo-store.ts';
export { bucketIn, type Bucket } from './photo-objects.ts';
export { openPhotoComparer, type Comparing, type PhotoComparer } from './photo-comparer.ts';
export { COMPARED_PX, type ComparedSize, type CompareRequest, type PhotoComparison } from './compare-photos.ts';
