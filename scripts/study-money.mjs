import { measureStudy } from './measure.mjs';

await measureStudy('money');
process.exit();
