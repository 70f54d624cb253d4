import type { PhotoBytes, ReportPhoto, ReportView } from '../../bench/ports.ts';
import { qrCode, QUIET, type QrCode } from './qr-code.ts';
import { beyondTests, NOTHING_SAID, OUTCOMES } from './report-words.ts';
import { sheets, type Sheet } from './sheet.ts';

/** A4, ISO 216, and its margin, in points. */
const PAGE = { width: 595.28, height: 841.89, margin: 50 } as const;
const INNER = PAGE.width - 2 * PAGE.margin;
const SIZE = { title: 20, head: 13, text: 10, small: 8.5, grade: 30 } as const;
const SOFT = '#55504a';
const PHOTO = { columns: 3, gap: 10, height: 120, words: 24 } as const;
const QR_PT = 86;

/** A condition report as a PDF on A4. Photos that a PDF cannot hold are left out with their words. */
export async function drawReport(report: ReportView, photo: PhotoBytes): Promise<Uint8Array> {
  const code = await qrCode(report.url);
  const pictures = new Map<string, Buffer>();
  for (const { hash } of [...report.photos.before, ...report.photos.after]) {
    const found = await photo(hash);
    if (found) pictures.set(hash, Buffer.from(found.bytes));
  }
  return sheets(`${report.title}, ${report.unit}`, (sheet) => {
    sheet.addPage({ size: [PAGE.width, PAGE.height], margin: PAGE.margin });
    drawHead(sheet, report, code);
    drawGrade(sheet, report);
    drawPhotos(sheet, report.photos.after.length > 0 ? 'Before the work' : 'Photos', report.photos.before, pictures);
    drawPhotos(sheet, 'After the work', report.photos.after, pictures);
    drawLines(
      sheet,
      'What is original',
      report.parts.map(({ name, state }) => `${name}: ${state}`),
    );
    drawLines(sheet, 'What was replaced', report.replaced);
    drawLines(sheet, 'Work done', report.work);
    drawTests(sheet, report);
    for (const { name, verdict, text, values } of beyondTests(report))
      drawLines(sheet, name, [[verdict.replaceAll('-', ' '), text].filter((words) => words !== '').join(': '), ...values]);
    if (report.cautions.length > 0) drawLines(sheet, 'Cautions', report.cautions);
  });
}

function drawHead(sheet: Sheet, { title, unit, bench, day, url }: ReportView, code: QrCode): void {
  const step = QR_PT / (code.length + 2 * QUIET);
  const [left, top] = [PAGE.width - PAGE.margin - QR_PT, PAGE.margin - 8];
  code.forEach((row, y) =>
    row.forEach((dark, x) => {
      if (dark) sheet.rect(left + (x + QUIET) * step, top + (y + QUIET) * step, step, step);
    }),
  );
  sheet.fill('black');
  const width = INNER - QR_PT - 12;
  sheet.fontSize(SIZE.title).text(title, PAGE.margin, PAGE.margin, { width });
  sheet.fontSize(SIZE.text).text(`${unit} · ${bench} · ${day}`, { width });
  sheet.fontSize(SIZE.small).fillColor(SOFT).text(url, { width }).fillColor('black');
  sheet.y = Math.max(sheet.y, top + QR_PT) + 4;
}

/** Begins another page where less than so much is left. */
function room(sheet: Sheet, points: number): void {
  if (sheet.y + points > PAGE.height - PAGE.margin) sheet.addPage({ size: [PAGE.width, PAGE.height], margin: PAGE.margin });
}

function heading(sheet: Sheet, words: string): void {
  room(sheet, 50);
  sheet.moveDown(0.7).fontSize(SIZE.head).fillColor('black').text(words, PAGE.margin, sheet.y, { width: INNER });
  sheet.fontSize(SIZE.text).moveDown(0.2);
}

function drawGrade(sheet: Sheet, { grade, ready }: ReportView): void {
  heading(sheet, 'Grade');
  if (!ready) sheet.text('Not ready: a test is open or failed, and nobody signed for it.', { width: INNER });
  if (!grade) return void sheet.text('Not graded yet.', { width: INNER });
  sheet.fontSize(SIZE.grade).text(grade.grade, { width: INNER });
  sheet.fontSize(SIZE.text).text(`${grade.means} (scale ${grade.scale})`, { width: INNER });
  if (grade.text !== '') sheet.text(grade.text, { width: INNER });
  for (const { name, found, grade: reached } of grade.criteria) sheet.text(`${reached}  ${name}: ${found}`, { width: INNER });
  if (grade.open.length > 0) soft(sheet, `Not looked at: ${grade.open.join(', ')}.`);
}

const soft = (sheet: Sheet, words: string): void =>
  void sheet.fontSize(SIZE.small).fillColor(SOFT).text(words, { width: INNER }).fillColor('black').fontSize(SIZE.text);

function drawLines(sheet: Sheet, title: string, lines: readonly string[]): void {
  heading(sheet, title);
  for (const line of lines.length === 0 ? [NOTHING_SAID] : lines) sheet.text(line, PAGE.margin, sheet.y, { width: INNER, paragraphGap: 3 });
}

function drawTests(sheet: Sheet, { tests }: ReportView): void {
  heading(sheet, 'Tests');
  for (const { name, outcome, limits, measured, reason } of tests) {
    room(sheet, 40);
    sheet.text(`${name}: ${OUTCOMES[outcome]}${reason === '' ? '' : `, because: ${reason}`}`, PAGE.margin, sheet.y, { width: INNER });
    for (const line of measured) sheet.text(line, { width: INNER, indent: 12 });
    soft(sheet, limits.join(' '));
    sheet.moveDown(0.3);
  }
}

function drawPhotos(sheet: Sheet, title: string, photos: readonly ReportPhoto[], pictures: ReadonlyMap<string, Buffer>): void {
  if (photos.length === 0) return;
  heading(sheet, title);
  const width = (INNER - (PHOTO.columns - 1) * PHOTO.gap) / PHOTO.columns;
  for (let first = 0; first < photos.length; first += PHOTO.columns) {
    room(sheet, PHOTO.height + PHOTO.words + PHOTO.gap);
    const top = sheet.y;
    photos.slice(first, first + PHOTO.columns).forEach(({ hash, side, caption, day }, column) => {
      const left = PAGE.margin + column * (width + PHOTO.gap);
      const picture = pictures.get(hash);
      if (picture) sheet.image(picture, left, top, { fit: [width, PHOTO.height], align: 'center', valign: 'center' });
      const words = [side.replaceAll('-', ' '), caption, day].filter((word) => word !== '').join(', ');
      sheet.fontSize(SIZE.small).text(words, left, top + PHOTO.height + 2, { width, height: PHOTO.words, ellipsis: true });
    });
    sheet.fontSize(SIZE.text).x = PAGE.margin;
    sheet.y = top + PHOTO.height + PHOTO.words + PHOTO.gap;
  }
}
