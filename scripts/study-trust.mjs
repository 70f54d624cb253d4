import { measureStudy } from './measure.mjs';

await measureStudy('trust');
process.exit();
