import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import S3rver from 's3rver';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBucketPhotoStore } from '../../src/edges/photos/index.ts';
import { photoStoreContract } from '../../src/edges/photos/photo-store.contract.ts';

/** Serves a bucket on loopback, its objects in a temporary folder. The keys are the ones that this server knows. */
describe('photos in a bucket', () => {
  const dir = mkdtempSync(join(tmpdir(), 'salvor-bucket-'));
  const server = new S3rver({
    address: '127.0.0.1',
    port: 0,
    silent: true,
    directory: dir,
    configureBuckets: [{ name: 'workshop', configs: [] }],
  });
  const env: Record<string, string> = { AWS_REGION: 'us-east-1' };
  beforeAll(async () => {
    const { port } = await server.run();
    env['AWS_ENDPOINT_URL_S3'] = `http://127.0.0.1:${port}`;
    process.env['AWS_ACCESS_KEY_ID'] = 'S3RVER';
    process.env['AWS_SECRET_ACCESS_KEY'] = 'S3RVER';
  });
  afterAll(async () => {
    await server.close();
    rmSync(dir, { recursive: true, force: true });
  });

  photoStoreContract('a bucket', () => openBucketPhotoStore({ name: 'workshop', prefix: 'photos/' }, env));

  it('that is not there are refused with the name of the trouble', async () => {
    const photos = openBucketPhotoStore({ name: 'elsewhere', prefix: '' }, env);
    await expect(photos.list()).rejects.toMatchObject({
      code: 'photos-away',
      message: expect.stringMatching(/bucket elsewhere .*NoSuchBucket/),
    });
    await photos.close();
  });
});
