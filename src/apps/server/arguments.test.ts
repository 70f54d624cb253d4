import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { serverArguments } from './arguments.ts';

const argsOf = (argv: string[], env = {}): unknown => {
  const result = serverArguments(argv, env);
  return result.ok ? result.args : result.message;
};

describe('the arguments of the server', () => {
  it('take the folder from --home, else from SALVOR_HOME, else ./bench-data', () => {
    expect(argsOf(['--home', '/a'], { SALVOR_HOME: '/b' })).toMatchObject({ home: resolve('/a') });
    expect(argsOf([], { SALVOR_HOME: '/b' })).toMatchObject({ home: resolve('/b') });
    expect(argsOf([], { SALVOR_HOME: '' })).toMatchObject({ home: resolve('bench-data'), port: 4780, empty: false, open: false });
  });

  it.each([['x'], ['65536'], ['-1'], ['80.5']])('refuse %s as a port and show the usage', (port) => {
    expect(argsOf([`--port=${port}`])).toContain('--port takes a number from 0 to 65535');
    expect(argsOf([`--port=${port}`])).toContain('Usage:');
  });

  it('keep the door to the network shut unless they are told', () => {
    expect(argsOf([])).toMatchObject({ lanPort: null });
    expect(argsOf(['--lan-port', '5000'])).toMatchObject({ lanPort: null });
    expect(argsOf(['--lan'])).toMatchObject({ lanPort: 4781 });
    expect(argsOf(['--lan', '--lan-port', '5000'])).toMatchObject({ lanPort: 5000 });
    expect(argsOf(['--lan', '--lan-port', 'x'])).toContain('--lan-port takes a number');
  });

  it('take a database from --database, else from SALVOR_DATABASE, else none, and only a PostgreSQL one', () => {
    expect(argsOf(['--database', 'postgres://a/b'], { SALVOR_DATABASE: 'postgres://c/d' })).toMatchObject({ database: 'postgres://a/b' });
    expect(argsOf([], { SALVOR_DATABASE: 'postgres://c/d' })).toMatchObject({ database: 'postgres://c/d' });
    expect(argsOf([], { SALVOR_DATABASE: '' })).toMatchObject({ database: null });
    expect(argsOf(['--database', 'mydb'])).toContain('--database takes an address');
  });

  it('take a bucket for photos from --photos, else from SALVOR_PHOTOS, else none', () => {
    expect(argsOf(['--photos', 's3://a'], { SALVOR_PHOTOS: 's3://b' })).toMatchObject({ photos: 's3://a' });
    expect(argsOf([], { SALVOR_PHOTOS: 's3://b' })).toMatchObject({ photos: 's3://b' });
    expect(argsOf([])).toMatchObject({ photos: null });
  });

  it('refuse what they do not know', () => {
    expect(argsOf(['--hoem', '/a'])).toContain('--hoem');
    expect(argsOf(['stray'])).toContain('stray');
  });
});
