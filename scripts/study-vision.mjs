import { measureStudy } from './measure.mjs';

await measureStudy('vision');
process.exit();
