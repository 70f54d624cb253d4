export { boardOfPlacement, randomBoard } from './boards.mjs';
export { cameraOver, degreesApart, seenAt } from './camera.mjs';
export { plantFaults } from './faults.mjs';
export { courtOf } from './packages.mjs';
export { heightOf } from './solids.mjs';
export { openStudio } from './studio.mjs';
export { takePhoto } from './take-photo.mjs';
