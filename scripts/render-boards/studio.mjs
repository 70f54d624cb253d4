import { createServer } from 'node:http';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../chromium.mjs';
import { ROOT } from '../run.mjs';
import { FINISHES } from './solids.mjs';

const FILES = {
  '/draw-scene.mjs': join(ROOT, 'scripts/render-boards/draw-scene.mjs'),
  '/three.module.js': join(ROOT, 'node_modules/three/build/three.module.js'),
  '/three.core.js': join(ROOT, 'node_modules/three/build/three.core.js'),
};
const PAGE = `<!doctype html><script type="importmap">{"imports":{"three":"/three.module.js"}}</script>
<script type="module">import { drawScene } from '/draw-scene.mjs'; window.drawScene = drawScene;</script>`;

/** A browser without a window in which scenes are drawn, one after the other; undefined where there is no Chromium. */
export async function openStudio() {
  const executablePath = chromiumPath();
  if (!executablePath) return undefined;
  const server = createServer((request, response) => {
    const file = FILES[request.url];
    response.setHeader('content-type', file ? 'text/javascript' : 'text/html');
    response.end(file ? readFileSync(file) : PAGE);
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const browser = await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--ignore-gpu-blocklist'],
  });
  const page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  await page.waitForFunction(() => 'drawScene' in window);
  return {
    /** PNG of a scene. */
    async draw(scene) {
      const url = await page.evaluate((each) => window.drawScene(each), { ...scene, finishes: FINISHES });
      return Buffer.from(url.slice(url.indexOf(',') + 1), 'base64');
    },
    async close() {
      await browser.close();
      server.close();
    },
  };
}
