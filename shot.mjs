import { chromium } from 'playwright-core';
const [,, port, ...jobs] = process.argv;
const b = await chromium.launch({ executablePath: '/usr/bin/chromium' });
for (const job of jobs) {
  const [name, path, width, script] = job.split('|');
  const p = await b.newPage({ viewport: { width: Number(width), height: 900 } });
  p.on('console', (m) => { if (m.type() === 'error' || m.type() === 'warning') console.log(name, m.type(), m.text()); });
  p.on('pageerror', (e) => console.log(name, 'PAGEERROR', e.message));
  await p.goto(`http://127.0.0.1:${port}${path}`, { waitUntil: 'networkidle' });
  if (script) { try { await eval(`(async()=>{${script}})()`); } catch (e) { console.log(name, 'SCRIPT', e.message); } await p.waitForTimeout(300); }
  await p.screenshot({ path: `/tmp/shots/${name}.png`, fullPage: true });
  const wide = await p.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  if (wide > 0) console.log(name, 'sideways', wide);
  await p.close();
}
await b.close();
