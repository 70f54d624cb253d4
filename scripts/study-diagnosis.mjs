import { measureStudy } from './measure.mjs';

await measureStudy('diagnosis');
process.exit();
