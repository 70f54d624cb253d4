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

/** The store of photos did not answer as it should; `message` is a clause that names it. */
export class PhotosAway extends Error {
  readonly code = 'photos-away';

  constructor(bucket: Bucket, cause: unknown) {
    const said = cause instanceof Error ? `${cause.name}: ${cause.message}` : String(cause);
    super(`the bucket ${bucket.name} of the photos does not answer as it should (${said})`, { cause });
    this.name = 'PhotosAway';
  }
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

  async #reaching<T>(work: (client: S3Client) => Promise<T>): Promise<T> {
    try {
      return await work(await (this.#client ??= connect(this.env)));
    } catch (error) {
      throw new PhotosAway(this.bucket, error);
    }
  }

  async write(hash: string, ending: string, bytes: Uint8Array | string): Promise<void> {
    const { PutObjectCommand } = await import('@aws-sdk/client-s3');
    const put = new PutObjectCommand({ Bucket: this.bucket.name, Key: this.keyOf(hash, ending), Body: bytes });
    await this.#reaching((client) => client.send(put));
  }

  async read(hash: string, ending: string): Promise<Uint8Array | null> {
    const { GetObjectCommand, NoSuchKey } = await import('@aws-sdk/client-s3');
    const get = new GetObjectCommand({ Bucket: this.bucket.name, Key: this.keyOf(hash, ending) });
    return this.#reaching(async (client) => {
      try {
        return await (await client.send(get)).Body!.transformToByteArray();
      } catch (error) {
        if (error instanceof NoSuchKey) return null;
        throw error;
      }
    });
  }

  async hashes(ending: string): Promise<string[]> {
    const { paginateListObjectsV2 } = await import('@aws-sdk/client-s3');
    const names: string[] = [];
    await this.#reaching(async (client) => {
      const pages = paginateListObjectsV2({ client }, { Bucket: this.bucket.name, Prefix: this.bucket.prefix });
      for await (const { Contents = [] } of pages) names.push(...Contents.map(({ Key }) => Key!.slice(this.bucket.prefix.length)));
    });
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
