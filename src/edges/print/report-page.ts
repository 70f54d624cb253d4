import type { PhotoBytes, ReportPhoto, ReportView } from '../../bench/ports.ts';
import { escaped, page, photoUrl } from './page.ts';
import { qrCode, qrSvg } from './qr-code.ts';
import { beyondTests, NOTHING_SAID, OUTCOMES } from './report-words.ts';

/** A condition report as one page of HTML with its photos inside. */
export async function reportPage(report: ReportView, photo: PhotoBytes): Promise<string> {
  const code = qrSvg(await qrCode(report.url), 'Address of the file of this unit');
  const { before, after } = report.photos;
  const body = [
    `<div class="head"><div><h1>${escaped(report.title)}</h1><p>${escaped(report.unit)} · ${escaped(report.bench)} · ${report.day}</p></div>${code}</div>`,
    gradePart(report),
    await photosPart(after.length > 0 ? 'Before the work' : 'Photos', before, photo),
    await photosPart('After the work', after, photo),
    `<h2>What is original</h2>${table(report.parts.map(({ name, state }) => [name, state]))}`,
    listPart('What was replaced', report.replaced),
    listPart('Work done', report.work),
    testsPart(report),
    beyondTests(report).map(measuredPart).join(''),
    report.cautions.length > 0
      ? `<h2>Cautions</h2><div class="care">${report.cautions.map((text) => `<p>${escaped(text)}</p>`).join('')}</div>`
      : '',
  ];
  return page(`${report.title}, ${report.unit}`, body.join('\n'));
}

function gradePart({ grade }: ReportView): string {
  if (!grade) return '<h2>Grade</h2><p>Not graded yet.</p>';
  const rows = grade.criteria.map(({ name, found, grade: reached }) => [name, found, reached]);
  const open = grade.open.length > 0 ? `<p class="soft">Not looked at: ${escaped(grade.open.join(', '))}.</p>` : '';
  const text = grade.text === '' ? '' : `<p>${escaped(grade.text)}</p>`;
  return `<h2>Grade</h2><p><span class="grade">${escaped(grade.grade)}</span> ${escaped(grade.means)} <span class="soft">(scale ${escaped(grade.scale)})</span></p>${text}${table(rows)}${open}`;
}

async function photosPart(title: string, photos: readonly ReportPhoto[], photo: PhotoBytes): Promise<string> {
  if (photos.length === 0) return '';
  const figures = await Promise.all(
    photos.map(async ({ hash, side, caption, day }) => {
      const words = escaped([side.replaceAll('-', ' '), caption, day].filter((word) => word !== '').join(', '));
      return `<figure><img src="${await photoUrl(photo, hash)}" alt="Photo: ${escaped(side)}"><figcaption>${words}</figcaption></figure>`;
    }),
  );
  return `<h2>${title}</h2><div class="photos">${figures.join('')}</div>`;
}

const listPart = (title: string, lines: readonly string[]): string =>
  `<h2>${title}</h2>${lines.length === 0 ? `<p>${NOTHING_SAID}</p>` : `<ul>${lines.map((line) => `<li>${escaped(line)}</li>`).join('')}</ul>`}`;

const table = (rows: readonly (readonly string[])[]): string =>
  rows.length === 0
    ? ''
    : `<table>${rows.map(([first, ...rest]) => `<tr><th scope="row">${escaped(first!)}</th>${rest.map((cell) => `<td>${escaped(cell)}</td>`).join('')}</tr>`).join('')}</table>`;

function testsPart({ tests, ready }: ReportView): string {
  const rows = tests.map(
    ({ name, outcome, limits, measured, reason }) =>
      `<tr><th scope="row">${escaped(name)}</th><td class="${outcome === 'fail' ? 'bad' : ''}">${OUTCOMES[outcome]}${reason === '' ? '' : `: ${escaped(reason)}`}` +
      `${measured.map((line) => `<br>${escaped(line)}`).join('')}<br><span class="soft">${limits.map(escaped).join(' ')}</span></td></tr>`,
  );
  return `<h2>Tests</h2>${ready ? '' : '<p class="bad">Not ready: a test is open or failed, and nobody signed for it.</p>'}<table>${rows.join('')}</table>`;
}

const measuredPart = ({ name, verdict, text, values }: ReportView['measured'][number]): string =>
  `<h2>${escaped(name)}</h2><p>${escaped(verdict.replaceAll('-', ' '))}${text === '' ? '' : `: ${escaped(text)}`}</p>${values.length === 0 ? '' : `<p class="soft">${values.map(escaped).join(' · ')}</p>`}`;
