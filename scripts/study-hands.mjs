import { measureStudy } from './measure.mjs';

await measureStudy('hands');
process.exit();
