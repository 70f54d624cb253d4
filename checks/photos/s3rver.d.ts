/** What the checks use of s3rver 3.7, which brings no types. */
declare module 's3rver' {
  export default class S3rver {
    constructor(options: {
      readonly address: string;
      readonly port: number;
      readonly silent: boolean;
      readonly directory: string;
      readonly configureBuckets: readonly { readonly name: string; readonly configs: readonly string[] }[];
    });
    run(): Promise<{ readonly port: number }>;
    close(): Promise<void>;
  }
}
