export type { BundleRefusal, BundleResult } from './bundle.ts';
export { openBackupShelf } from './backup-shelf.ts';
export { modelBundles } from './model-bundle.ts';
export { readFolder } from './folder-bundle.ts';
export { readBundle, writeBundle } from './zip-bundle.ts';
