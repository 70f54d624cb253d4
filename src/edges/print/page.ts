import { createHash } from 'node:crypto';
import type { PhotoBytes } from '../../bench/ports.ts';

const ESCAPED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as it may stand in HTML, in an element or in an attribute. */
export const escaped = (text: string): string => text.replaceAll(/[&<>"']/g, (sign) => ESCAPED[sign]!);

/** A photo as it stands inside a page; empty when it is not here. */
export async function photoUrl(photo: PhotoBytes, hash: string): Promise<string> {
  const found = await photo(hash);
  return found ? `data:${found.mediaType};base64,${Buffer.from(found.bytes).toString('base64')}` : '';
}

const STYLE = `
:root{color-scheme:light dark;--paper:#faf8f3;--ink:#1f1d1a;--soft:#5d5850;--line:#d8d2c4;--accent:#7a3d10;--bad:#9b1c1c}
@media (prefers-color-scheme:dark){:root{--paper:#181715;--ink:#eeeae1;--soft:#b3aca0;--line:#3d3a34;--accent:#e8a56c;--bad:#f19a9a}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:52rem;padding:1.25rem;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,sans-serif;overflow-wrap:anywhere}
h1{font-size:1.6rem;line-height:1.2;margin:0 0 .3rem}h2{font-size:1.15rem;margin:1.6rem 0 .5rem}
p{margin:.4rem 0}.soft{color:var(--soft)}.bad{color:var(--bad)}
table{border-collapse:collapse;width:100%}th,td{text-align:start;vertical-align:top;padding:.35rem .6rem .35rem 0;border-top:1px solid var(--line)}
figure{margin:.6rem 0}img{max-width:100%;height:auto;display:block;border-radius:.3rem}figcaption{color:var(--soft);font-size:.9rem}
.photos{display:grid;grid-template-columns:repeat(auto-fill,minmax(13rem,1fr));gap:.8rem}
.head{display:flex;gap:1rem;justify-content:space-between;align-items:start}.qr{width:7rem;flex:none}
.grade{font-size:2.4rem;font-weight:700;color:var(--accent);line-height:1}
.care{border-inline-start:3px solid var(--accent);padding-inline-start:.8rem}
@media print{body{background:#fff;color:#000}}`;

/** Nothing is fetched and only `script` itself may run, wherever the page lies. */
const policyFor = (script: string): string =>
  `default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src ${script === '' ? "'none'" : `'sha256-${createHash('sha256').update(script).digest('base64')}'`}`;

/** A whole page that needs nothing from elsewhere; `more` is added to its style, `script` runs at its end. */
export const page = (title: string, body: string, more = '', script = ''): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">` +
  `<meta http-equiv="Content-Security-Policy" content="${policyFor(script)}">` +
  `<title>${escaped(title)}</title><style>${STYLE}${more}</style></head><body><main>${body}</main>${script === '' ? '' : `<script>${script}</script>`}</body></html>\n`;
