import { describe, expect, it } from 'vitest';
import { portTaken } from './port-taken.ts';

describe('a port in use', () => {
  it('is told with the address when a Salvor serves the same folder there', async () => {
    const told = await portTaken(4780, '/bench', async () => ({ name: 'salvor', home: '/bench', seq: 3 }));
    expect(told).toEqual({
      isSame: true,
      url: 'http://127.0.0.1:4780/',
      sentence: 'Salvor is already open on this bench at http://127.0.0.1:4780/',
    });
  });

  it('is told with another port when a Salvor serves another folder', async () => {
    const told = await portTaken(4780, '/bench', async () => ({ name: 'salvor', home: '/other' }));
    expect(told.isSame).toBe(false);
    expect(told.sentence).toMatch(/another bench \(\/other\).*--port 4781/);
  });

  it('is told as another program when what answers is no Salvor, or nothing answers', async () => {
    const stranger = await portTaken(65_535, '/bench', async () => ({ name: 'stranger' }));
    expect(stranger.sentence).toMatch(/another program.*--port 65534/);
    const silent = await portTaken(4780, '/bench', () => Promise.reject(new Error('refused')));
    expect(silent.sentence).toContain('another program');
  });
});
