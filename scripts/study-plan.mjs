import { measureStudy } from './measure.mjs';

await measureStudy('plan');
process.exit();
