import type { Printer } from '../../bench/ports.ts';
import { drawLabels } from './draw-labels.ts';
import { drawMat } from './draw-mat.ts';
import { drawReport } from './draw-report.ts';
import { reportPage } from './report-page.ts';
import { storyPage } from './story-page.ts';

/** A printer that writes PDF and HTML. The libraries are loaded with the first sheet. */
export const openPrinter = (): Printer => ({ mat: drawMat, labels: drawLabels, reportSheet: drawReport, reportPage, storyPage });
