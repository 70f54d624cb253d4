import { expect, it } from 'vitest';
import { commandLine } from '../testing/command-line.ts';

const DATABASE = 'postgres://salvor@127.0.0.1/workshop';

it('moves a bench into a database and back, and both have one hash', async () => {
  const { salvor } = commandLine();
  await salvor(
    'add',
    'lot',
    '--title',
    'Two lamps',
    '--seller',
    'Harbour Clearance',
    '--price',
    '24',
    '--items',
    'Lamp:lamp-1:20; Lamp:lamp-1:10',
  );
  await salvor('add', 'receive', '1');
  const to = await salvor('--json', 'move', '--to', DATABASE);
  expect(to).toMatchObject({ code: 0 });
  const sent = JSON.parse(to.out) as { events: number; digest: string };
  expect(sent).toEqual({ events: 2, digest: expect.stringContaining('item-received') });
  const back = await salvor('--json', '--home', '/another', 'move', '--from', DATABASE);
  expect(JSON.parse(back.out)).toEqual(sent);
  expect((await salvor('--home', '/another', 'list')).out).toContain('Lamp');
});

it('fills only a database, or a bench, that is empty', async () => {
  const { salvor } = commandLine();
  await salvor('init', '--name', 'one');
  expect(await salvor('move', '--to', DATABASE)).toMatchObject({ code: 0 });
  for (const way of ['--to', '--from'])
    expect(await salvor('move', way, DATABASE)).toMatchObject({ code: 1, err: expect.stringContaining('empty') });
});

it('moves the photos too when it is told where they go', async () => {
  const { salvor, parts } = commandLine();
  const { photos } = await parts.open('', false);
  await photos.put('a.png', Buffer.from('picture of a board'));
  expect((await salvor('move', '--to', DATABASE, '--photos', 's3://workshop')).out).toContain('1 photo');
  expect(await parts.openBucket('s3://workshop')!.list()).toEqual(await photos.list());
  expect(await salvor('move', '--to', DATABASE, '--photos', 'workshop')).toMatchObject({ code: 2 });
});

it('wants to know which way', async () => {
  const { salvor } = commandLine();
  expect(await salvor('move')).toMatchObject({ code: 2, err: expect.stringContaining('either --to or --from') });
  expect(await salvor('move', '--to', DATABASE, '--from', DATABASE)).toMatchObject({ code: 2 });
});
