import { blot, box, disc, Relief } from './relief.mjs';
import { textPath, textWidth } from './stroke-font.mjs';

const PX_PER_MM = 13;
const MARGIN_MM = 3;

/** Colours of shells, by name: body, trim, keys. */
const SHELLS = {
  slate: { body: '#5b6470', trim: '#3c434c', keys: '#23262b', accent: '#c8553d' },
  cream: { body: '#cfc7b2', trim: '#8d8674', keys: '#4a4740', accent: '#b7412f' },
  red: { body: '#8e2f2a', trim: '#541b19', keys: '#2a2322', accent: '#d8b25c' },
  grey: { body: '#8f9496', trim: '#5d6264', keys: '#2b2e30', accent: '#3d6fa0' },
};

const word = (relief, text, x, y, size, fill, weight = 0.14) =>
  relief.put(textPath(text, x - textWidth(text, size) / 2, y + size / 2, size), { fill, width: size * weight });

const start = (w, h) => new Relief(w + 2 * MARGIN_MM, h + 2 * MARGIN_MM, PX_PER_MM);

/** A slab with rounded edges, in steps so that its rim catches the light. */
function slab(relief, w, h, r, fill, height) {
  for (let i = 0; i <= 4; i++)
    relief.put(box(0, 0, w - i * 0.7, h - i * 0.7, r - i * 0.3), { fill, h: height * Math.sqrt(0.35 + (0.65 * i) / 4), gloss: 0.32 });
}

/** The front of a Tern: window left of the middle, a cross of keys, two round keys, a grille. */
export function ternFront({ colour, screen = 'dark', damage = [], random, label, brand = 'TERN' }) {
  const [w, h] = [136, 82];
  const relief = start(w, h);
  const colours = SHELLS[colour];
  relief.group(w / 2 + MARGIN_MM, h / 2 + MARGIN_MM, 0, () => {
    slab(relief, w, h, 11, colours.body, 9);
    relief.put(box(0, -4, 66, 56, 4), { fill: colours.trim, h: 8.2, gloss: 0.5 });
    relief.put(box(0, -6, 58, 44, 1), { fill: '#20262a', h: 7.6, gloss: 0.9 });
    drawScreen(relief, screen, random);
    word(relief, brand, -20, 20, 3.4, '#d9d6cc');
    word(relief, label, 19, 20, 1.9, colours.accent);
    thumbDish(relief, -51, -4, colours);
    ['1', '2', '3'].forEach((digit, i) => {
      const [x, y] = [51, -17 + i * 12];
      relief.put(box(x, y, 21, 8.4, 4.2), { fill: colours.trim, h: 8.5, gloss: 0.3 });
      relief.put(box(x, y, 19.6, 7, 3.5), { fill: i === 1 ? colours.accent : colours.keys, h: 11, gloss: 0.4 });
      word(relief, digit, x, y, 2.4, '#d9d6cc');
    });
    for (const x of [-6, 6]) relief.put(box(x, 33, 8, 2.6, 1.3), { fill: colours.keys, h: 10, gloss: 0.25 });
    for (let i = 0; i < 6; i++) relief.put(`M${42 + i * 3.2} 24l-3 9`, { fill: '#15171a', h: 7, gloss: 0.1, width: 1.1 });
    relief.put(disc(-60, -28, 1.1), { fill: screen === 'dark' ? '#4d1512' : '#ff5a3c', h: 9.1, gloss: 0.7 });
    wearAndTear(relief, w, h, damage, random);
  });
  return relief;
}

/** A dish that is tilted with the thumb, with a mark at each quarter. */
function thumbDish(relief, x, y, colours) {
  relief.put(disc(x, y, 12.5), { fill: colours.trim, h: 8.4, gloss: 0.3 });
  relief.put(disc(x, y, 11), { fill: colours.keys, h: 10.6, gloss: 0.35 });
  relief.put(disc(x, y, 8.6), { fill: colours.keys, h: 8.8, edge: 10.4, gloss: 0.35 });
  for (const [dx, dy] of [
    [0, -9.8],
    [9.8, 0],
    [0, 9.8],
    [-9.8, 0],
  ])
    relief.put(disc(x + dx, y + dy, 0.7), { fill: colours.accent, h: 10.9, gloss: 0.4 });
}

/** What the window shows: `dark`, `picture`, `lines` (some columns dead) or `dim` (no light behind it). */
function drawScreen(relief, screen, random) {
  const [cx, cy, w, h] = [0, -6, 52, 38];
  if (screen === 'dark') {
    relief.put(box(cx, cy, w, h, 0.5), { fill: '#2b3330', gloss: 0.85 });
    return;
  }
  const glow = screen === 'dim' ? ['#4d4a44', '#3a362f', '#5e5a52'] : ['#d9a85a', '#5b3416', '#f3d9a0'];
  relief.put(box(cx, cy, w, h, 0.5), { fill: glow[0], gloss: 0.45 });
  for (let i = 0; i < 7; i++) {
    const x = cx - w / 2 + 4 + i * 7.2;
    const tall = 4 + Math.floor(random() * 4) * 2.4;
    relief.put(box(x, cy + h / 2 - tall / 2, 6.2, tall, 0), { fill: glow[1], opacity: 0.85 });
  }
  relief.put(box(cx - 9, cy + 2, 3.2, 4.8, 0), { fill: glow[1] });
  relief.put(disc(cx + 15, cy - 11, 3), { fill: glow[2] });
  word(relief, '014200', cx - 14, cy - 15, 3, glow[1], 0.18);
  if (screen === 'lines')
    for (let i = 0; i < 9; i++) {
      const x = cx - w / 2 + 6 + random() * (w - 12);
      relief.put(`M${x} ${cy - h / 2}V${cy + h / 2}`, { fill: random() < 0.5 ? '#33210f' : '#fbeccb', width: 0.35, opacity: 0.85 });
    }
}

/** The back of a Tern: grille of ribs, label, the door of the battery bay; `inside` shows the open bay. */
export function ternBack({ colour, inside = false, damage = [], random, label }) {
  const [w, h] = [136, 82];
  const relief = start(w, h);
  const colours = SHELLS[colour];
  relief.group(w / 2 + MARGIN_MM, h / 2 + MARGIN_MM, 0, () => {
    slab(relief, w, h, 11, colours.body, 8);
    for (let i = 0; i < 9; i++) relief.put(box(-14 + i * 3.6, -24, 1.4, 18, 0.7), { fill: colours.trim, h: 7, gloss: 0.2 });
    relief.put(box(36, -22, 34, 20, 1), { fill: '#c9c6bc', h: 8.1, gloss: 0.35 });
    word(relief, `TERN ${label}`, 36, -27, 2.6, '#33363a');
    word(relief, 'POCKET GAME PLAYER', 36, -22, 1.6, '#33363a');
    word(relief, `NO ${Math.floor(10000 + random() * 89999)}`, 36, -17, 1.8, '#33363a');
    for (const [x, y] of [
      [-58, -32],
      [58, -34],
      [-58, 33],
      [58, 33],
    ]) {
      relief.put(disc(x, y, 2.6), { fill: '#1b1d20', h: 4, gloss: 0.1 });
      relief.put(disc(x, y, 1.9), { fill: '#9a9d9e', h: 5, edge: 4.5, gloss: 0.8, metal: 1 });
      relief.put(`M${x - 1.2} ${y}H${x + 1.2}M${x} ${y - 1.2}V${y + 1.2}`, { fill: '#3a3c3e', h: 4.3, width: 0.5, gloss: 0.3 });
    }
    if (inside) batteryBay(relief, colours, random, damage);
    else {
      relief.put(box(0, 17, 96, 36, 3), { fill: colours.trim, h: 7.4, gloss: 0.25 });
      relief.put(box(0, 17, 94.6, 34.6, 2.6), { fill: colours.body, h: 8.2, gloss: 0.3 });
      for (let i = 0; i < 3; i++) relief.put(box(0, 3.5 + i * 2.2, 26, 0.9, 0.4), { fill: colours.trim, h: 8.6, gloss: 0.2 });
    }
    wearAndTear(relief, w, h, damage, random);
  });
  return relief;
}

function batteryBay(relief, colours, random, damage) {
  relief.put(box(0, 17, 96, 36, 3), { fill: '#24272b', h: 1.2, gloss: 0.2 });
  relief.put(`M-46 17H46`, { fill: '#33373c', h: 2, gloss: 0.2, width: 0.7 });
  const eaten = damage.find((each) => each.kind === 'leak');
  for (const y of [8, 26]) {
    relief.put(box(-45, y, 2.4, 8, 0.5), { fill: '#c9cbc8', h: 5, gloss: 0.8, metal: 1 });
    relief.put(`M45 ${y - 4}l-4 1.6l4 1.6l-4 1.6l4 1.6`, { fill: '#d2d4d1', h: 6, gloss: 0.85, metal: 1, width: 0.8 });
    if (!eaten) continue;
    for (const x of [-44, 44])
      for (let k = 0; k < 90 * eaten.amount; k++) {
        const fill = ['#dfe6d8', '#bcd6c6', '#6fae9b', '#e9ece2', '#8a6a33'][Math.floor(random() * 5)];
        const [px, py] = [x + (random() - 0.5) * 9, y + (random() - 0.5) * 10];
        relief.put(blot(px, py, 0.3 + 0.9 * random(), 0.5, random), { fill, opacity: 0.7, h: 3 + 4 * random(), edge: 2, gloss: 0.05 });
      }
  }
}

/** A Corrie from above: the lid with its window and a tape behind it, a row of keys on its side. */
export function corrieFront({ colour, screen = 'tape', damage = [], random }) {
  const [w, h] = [116, 86];
  const relief = start(w, h);
  const colours = SHELLS[colour];
  relief.group(w / 2 + MARGIN_MM, h / 2 + MARGIN_MM, 0, () => {
    slab(relief, w, h, 6, colours.body, 10);
    relief.put(box(-2, -3, 104, 66, 3), { fill: colours.trim, h: 9.3, gloss: 0.4 });
    relief.put(box(-2, -3, 101, 63, 2.4), { fill: colours.body, h: 10.4, gloss: 0.4 });
    relief.put(box(-2, 0, 62, 26, 3), { fill: '#1b1e22', h: 9, gloss: 0.95 });
    if (screen !== 'empty') tape(relief);
    word(relief, 'CORRIE', -34, -26, 4.2, '#ece6d6');
    word(relief, 'CP-4 STEREO TAPE PLAYER', 21, -26, 1.9, '#ece6d6');
    for (let i = 0; i < 4; i++) {
      relief.put(box(-36 + i * 20, 37, 17, 6, 1.2), { fill: colours.keys, h: 11.6, gloss: 0.35 });
      word(relief, ['>', '<<', '>>', 'STOP'][i], -36 + i * 20, 37, 1.9, '#d9d6cc');
    }
    relief.put(box(50, 37, 9, 5, 2), { fill: colours.accent, h: 11, gloss: 0.4 });
    wearAndTear(relief, w, h, damage, random);
  });
  return relief;
}

function tape(relief) {
  relief.put(box(-2, 0, 60, 24, 2), { fill: '#cbbf9d', h: 8, gloss: 0.5, opacity: 0.82 });
  for (const [x, wound] of [
    [-16, 9.4],
    [12, 6.2],
  ]) {
    relief.put(disc(x, 0, wound), { fill: '#3b2a20', h: 8.2, gloss: 0.6 });
    relief.put(disc(x, 0, 4), { fill: '#e9e5d8', h: 8.4, gloss: 0.4 });
    for (let i = 0; i < 6; i++) {
      const angle = (Math.PI * i) / 3;
      relief.put(box(x + 3 * Math.cos(angle), 3 * Math.sin(angle), 0.9, 0.9), { fill: '#2a2d31', h: 7.6, gloss: 0.2 });
    }
  }
}

/** Scratches, a cracked window, grime in the corners, a sticker's ghost, as the scene lists them. */
function wearAndTear(relief, w, h, damage, random) {
  for (const { kind, amount = 0.5 } of damage) {
    if (kind === 'scratches') scratches(relief, w, h, amount, random);
    else if (kind === 'cracked-window') crack(relief, random);
    else if (kind === 'grime') grime(relief, w, h, amount, random);
    else if (kind === 'sticker') relief.put(box(-38, 30, 26, 9, 0.6), { fill: '#d9d2bc', opacity: 0.5, gloss: 0.1 });
    else if (kind !== 'leak') throw new Error(`There is no wear of the kind "${kind}" for a shell.`);
  }
}

function scratches(relief, w, h, amount, random) {
  for (let i = 0; i < 70 * amount; i++) {
    const [x, y] = [(random() - 0.5) * w * 0.92, (random() - 0.5) * h * 0.9];
    const [dx, dy] = [(random() - 0.5) * 16, (random() - 0.5) * 9];
    relief.put(`M${x} ${y}l${dx} ${dy}`, { fill: '#e9e7e0', opacity: 0.12 + 0.3 * random(), width: 0.06 + 0.14 * random() ** 3 });
  }
}

function crack(relief, random) {
  for (let i = 0; i < 7; i++) {
    let [x, y] = [12, -12];
    let d = `M${x} ${y}`;
    const angle = (2 * Math.PI * i) / 7 + random();
    for (let k = 0; k < 5; k++) {
      x += (2.5 + 3 * random()) * Math.cos(angle + (random() - 0.5) * 0.9);
      y += (2 + 2.2 * random()) * Math.sin(angle + (random() - 0.5) * 0.9);
      d += `L${Math.max(-29, Math.min(29, x))} ${Math.max(-28, Math.min(16, y))}`;
    }
    relief.put(d, { fill: '#e6ebe9', opacity: 0.75, width: 0.22, gloss: 1 });
    relief.put(d, { fill: '#0f1214', opacity: 0.5, width: 0.1 });
  }
}

function grime(relief, w, h, amount, random) {
  for (let i = 0; i < 260 * amount; i++) {
    const side = Math.floor(random() * 4);
    const along = random() - 0.5;
    const inward = 0.5 - 0.07 * random() ** 2;
    const [x, y] =
      side < 2 ? [along * w * 0.94, (side ? 1 : -1) * inward * h * 0.95] : [(side === 2 ? 1 : -1) * inward * w * 0.95, along * h * 0.9];
    for (let k = 0; k < 3; k++)
      relief.put(blot(x + random() - 0.5, y + random() - 0.5, 0.2 + 0.9 * random() ** 2, 0.4, random), {
        fill: '#3a3124',
        opacity: 0.05 + 0.08 * random(),
        gloss: 0.1,
      });
  }
}
