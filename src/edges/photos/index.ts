export { openPhotoStore } from './photo-store.ts';
