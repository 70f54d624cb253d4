export { openPhotoStore } from './photo-store.ts';
export { openPhotoComparer, type Comparing, type PhotoComparer } from './photo-comparer.ts';
export { COMPARED_PX, type ComparedSize, type CompareRequest, type PhotoComparison } from './compare-photos.ts';
