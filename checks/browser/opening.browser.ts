import { describe, expect, it } from 'vitest';
import type { ItemFile, OpeningView } from '../../src/bench/views/index.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { emptyBench } from './empty-bench.ts';

const on = emptyBench();

async function record(...events: readonly { readonly kind: string; readonly body: object }[]): Promise<void> {
  const headers = { 'content-type': 'application/json' };
  const response = await fetch(`${on.server.url}/api/events`, { method: 'POST', headers, body: JSON.stringify({ events }) });
  expect(response.status).toBe(200);
}

/** A Tern TN-10 that has come. */
async function tern(id: string): Promise<string> {
  const items = [{ item_id: id, name: 'Blue Tern', model_id: 'tern-tn10', expected_value_minor: 2000 }];
  const lot = { lot_id: `lot-${id}`, title: 'One Tern', seller: 'Harbour Clearance', price_minor: 900, currency: 'GBP', items };
  await record({ kind: 'lot-bought', body: lot }, { kind: 'item-received', body: { item_id: id } });
  return id;
}

const nameOf = (walk: BenchWalk): Promise<string> => walk.page.locator('main h2.headline').first().innerText();

describe.each(SCREENS)('a unit is opened and closed on $name', (screen) => {
  it('step by step, with signs, a screw too few and one of another kind, and is closed with all that came out', async () => {
    const id = await tern(`tern-${screen.width}`);
    const walk = await BenchWalk.begin(on.browser, on.server, screen);
    const main = walk.page.locator('main');
    const opening = (): Promise<OpeningView> => walk.ask<OpeningView>(`/api/items/${id}/opening?to=slot:display`);
    await walk.goto(`/bench/${id}`);
    await walk.page.getByRole('link', { name: 'Open or close it' }).click();
    await walk.settled();
    await walk.page.getByLabel('What for').selectOption('slot:display');
    await walk.settled();
    expect(await nameOf(walk)).toBe('Photograph all sides');
    await walk.expectAccessible();
    await walk.noted(() => walk.press(main, 'Torn seal, scratched screws or pry marks'));
    while ((await nameOf(walk)) !== 'Take out the screws of the back') await walk.noted(() => walk.press(main, 'Done'));
    await walk.press(main, 'Came out: one less');
    await walk.press(main, 'Of another kind: one more');
    await walk.expectAccessible();
    await walk.noted(() => walk.press(main, 'Done'));
    const { fasteners } = await opening();
    expect(fasteners.sets.find(({ set }) => set === 'back-screws')).toMatchObject({ out: 4, foreign: 1, on_mat: 4 });
    expect(await walk.region('Screws and clips').innerText()).toContain('2 × Screws of the back: Three-wing 1.5, 8 mm');
    const { findings } = await walk.ask<ItemFile>(`/api/items/${id}`);
    expect(findings.map(({ place, sees }) => `${place}: ${sees}`)).toEqual([
      'shell: opened-before',
      'back-screws: missing',
      'back-screws: opened-before',
    ]);
    while ((await nameOf(walk)) !== 'You are there') await walk.noted(() => walk.press(main, 'Done'));
    expect((await opening()).stage).toBe('open');
    await walk.press(main, 'Close it again');
    await walk.settled();
    while ((await nameOf(walk)) !== 'It is closed') await walk.noted(() => walk.press(main, 'It is back'));
    expect(await opening()).toMatchObject({ stage: 'closed', fasteners: { even: true, whole: false } });
    await walk.unfold(walk.region('Screws and clips'), 'The mat on the screen');
    await walk.expectAccessible();
    await walk.end();
  });

  it('by voice once it is turned on, with a sign while it listens', async () => {
    const id = await tern(`voice-${screen.width}`);
    const walk = await BenchWalk.begin(on.browser, on.server, screen);
    await walk.page.addInitScript(() => {
      const heard = window as unknown as { listening: number; say: (words: string) => void; SpeechRecognition: unknown };
      heard.listening = 0;
      heard.SpeechRecognition = class extends EventTarget {
        start(): void {
          heard.listening++;
          heard.say = (transcript) =>
            this.dispatchEvent(Object.assign(new Event('result'), { resultIndex: 0, results: [[{ transcript }]] }));
        }
        abort(): void {
          heard.listening--;
        }
      };
    });
    const say = (words: string) => walk.page.evaluate((text) => (window as unknown as { say: (words: string) => void }).say(text), words);
    const listening = () => walk.page.evaluate(() => (window as unknown as { listening: number }).listening);
    await walk.goto(`/bench/${id}/opening`);
    expect(await listening()).toBe(0);
    expect(await walk.page.locator('main').innerText()).toContain('some browsers send what they hear to a service of their maker');
    await walk.press(walk.page.locator('main'), 'Take the time');
    await walk.press(walk.page.locator('main'), 'Listen for “done”');
    await walk.page.getByRole('status').filter({ hasText: 'Listening' }).waitFor();
    expect(await listening()).toBe(1);
    await walk.expectAccessible();
    const first = await nameOf(walk);
    await walk.noted(() => say('all right, done'));
    expect(await nameOf(walk)).not.toBe(first);
    await say('stop');
    await expect.poll(listening).toBe(0);
    await walk.end();
  });
});

it('a mat is printed as PDF for both papers', async () => {
  for (const paper of ['A4', 'Letter']) {
    const response = await fetch(`${on.server.url}/api/models/tern-tn10/mat?paper=${paper}`);
    expect(response.headers.get('content-type')).toBe('application/pdf');
    expect(new TextDecoder('latin1').decode((await response.arrayBuffer()).slice(0, 5))).toBe('%PDF-');
  }
});
