export { openPhotoStore } from './photo-store.ts';
export { openPhotoComparer } from './photo-comparer.ts';
export { openComparisonShelf } from './comparison-shelf.ts';
export { COMPARED_PX } from './compare-photos.ts';
