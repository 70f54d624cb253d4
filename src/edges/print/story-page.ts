import type { PhotoBytes, StoryLine, StoryView } from '../../bench/ports.ts';
import { escaped, page, photoUrl } from './page.ts';

/** Moves the edge between both photos; without it both lie one below the other. */
const SLIDER =
  `const box=document.querySelector('.pair');if(box){const range=box.querySelector('input');const top=box.querySelector('.after');` +
  `box.classList.add('live');const move=()=>{top.style.clipPath='inset(0 0 0 '+range.value+'%)'};range.addEventListener('input',move);move()}`;

const STYLE = `
.pair{position:relative}.pair input{display:none;width:100%;min-height:44px}.pair.live input{display:block}
.pair.live .stage{position:relative}.pair.live .stage img{width:100%;aspect-ratio:4/3;object-fit:cover}
.pair.live .after{position:absolute;inset:0}
.tag{color:var(--soft);font-size:.9rem;display:flex;justify-content:space-between}ol{list-style:none;padding:0;margin:0}li{margin:.5rem 0}`;

/** The story of a unit as one page of HTML that can be sent to anyone: photos are inside, nothing is fetched. */
export async function storyPage(story: StoryView, photo: PhotoBytes): Promise<string> {
  const days = await Promise.all(
    story.days.map(
      async ({ day, lines }) => `<h2>${day}</h2><ol>${(await Promise.all(lines.map((line) => lineHtml(line, photo)))).join('')}</ol>`,
    ),
  );
  const body = `<h1>${escaped(story.title)}</h1><p>${escaped(story.intro)}</p>${await pairHtml(story.pair, photo)}${days.join('')}`;
  return page(story.title, body, STYLE, story.pair ? SLIDER : '');
}

async function pairHtml(pair: StoryView['pair'], photo: PhotoBytes): Promise<string> {
  if (!pair) return '';
  const [before, after] = await Promise.all([photoUrl(photo, pair.before.hash), photoUrl(photo, pair.after.hash)]);
  const side = escaped(pair.before.side.replaceAll('-', ' '));
  return (
    `<div class="pair"><div class="stage"><img src="${before}" alt="Before, ${side}"><img class="after" src="${after}" alt="After, ${side}"></div>` +
    `<input type="range" min="0" max="100" value="50" aria-label="How much of the photo before is shown, per cent">` +
    `<p class="tag"><span>before, ${pair.before.day}</span><span>after, ${pair.after.day}</span></p></div>`
  );
}

async function lineHtml({ text, photo }: StoryLine, bytes: PhotoBytes): Promise<string> {
  if (!photo) return `<li>${escaped(text)}</li>`;
  return `<li><figure><img src="${await photoUrl(bytes, photo.hash)}" alt="Photo: ${escaped(photo.side)}" loading="lazy"><figcaption>${escaped(text)}</figcaption></figure></li>`;
}
