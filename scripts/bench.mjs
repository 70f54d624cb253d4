import { measureStudy } from './measure.mjs';

await measureStudy('path');
process.exit();
