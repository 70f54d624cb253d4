import { measureStudy } from './measure.mjs';

await measureStudy('models');
process.exit();
