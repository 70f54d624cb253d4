import type { S3Client } from '@aws-sdk/client-s3';
import type { PhotoShelf } from './photo-shelf.ts';

/** Where photos lie in a store that speaks S3. */
export interface Bucket {
  readonly name: string;
  /** Begins the name of every object; empty, or with a slash at its end. */
  readonly prefix: string;
}

/** The bucket of an address such as s3://workshop/photos; null for text of another form. */
export function bucketIn(address: string): Bucket | null {
  const match = /^s3:\/\/([a-z0-9][a-z0-9.-]{1,61}[a-z0-9])(?:\/([A-Za-z0-9_./-]*))?$/.exec(address);
  if (!match) return null;
  const prefix = (match[2] ?? '').replace(/\/+$/, '');
  return { name: match[1]!, prefix: prefix === '' ? '' : `${prefix}/` };
}

/**
 * Photos as objects of a bucket, which several machines may share: an object is written in one request, so it is there whole or not at all. Keys,
 * region and endpoint come from the environment, as the client of the store reads them. The client is loaded with the first photo.
 */
export class PhotoObjects implements PhotoShelf {
  #client: Promise<S3Client> | undefined;

  constructor(
    private readonly bucket: Bucket,
    private readonly env: Readonly<Record<string, string | undefined>>,
  ) {}

  private keyOf(hash: string, ending: string): string {
    return `${this.bucket.prefix}${hash.slice(0, 2)}/${hash}.${ending}`;
  }

  private client(): Promise<S3Client> {
    this.#client ??= connect(this.env);
    return this.#client;
  }

  async write(hash: string, ending: string, bytes: Uint8Array | string): Promise<void> {
    const { PutObjectCommand } = await import('@aws-sdk/client-s3');
    await (await this.client()).send(new PutObjectCommand({ Bucket: this.bucket.name, Key: this.keyOf(hash, ending), Body: bytes }));
  }

  async read(hash: string, ending: string): Promise<Uint8Array | null> {
    const { GetObjectCommand, NoSuchKey } = await import('@aws-sdk/client-s3');
    try {
      const found = await (await this.client()).send(new GetObjectCommand({ Bucket: this.bucket.name, Key: this.keyOf(hash, ending) }));
      return await found.Body!.transformToByteArray();
    } catch (error) {
      if (error instanceof NoSuchKey) return null;
      throw error;
    }
  }

  async hashes(ending: string): Promise<string[]> {
    const { paginateListObjectsV2 } = await import('@aws-sdk/client-s3');
    const names: string[] = [];
    const pages = paginateListObjectsV2({ client: await this.client() }, { Bucket: this.bucket.name, Prefix: this.bucket.prefix });
    for await (const { Contents = [] } of pages) names.push(...Contents.map(({ Key }) => Key!.slice(this.bucket.prefix.length)));
    return names
      .filter((name) => name.endsWith(`.${ending}`))
      .map((name) => name.slice(3, -ending.length - 1))
      .sort();
  }

  /** Nothing half is ever there. */
  async sweep(): Promise<void> {}

  async close(): Promise<void> {
    (await this.#client)?.destroy();
  }
}

async function connect(env: Readonly<Record<string, string | undefined>>): Promise<S3Client> {
  const { S3Client: Client } = await import('@aws-sdk/client-s3');
  const endpoint = env['AWS_ENDPOINT_URL_S3'] ?? env['AWS_ENDPOINT_URL'];
  // A store on an endpoint of its own seldom has a name for each bucket.
  return new Client({ region: env['AWS_REGION'] ?? 'us-east-1', ...(endpoint ? { endpoint, forcePathStyle: true } : {}) });
}
