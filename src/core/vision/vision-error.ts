/** A caller's mistake with a picture: `code` says which. */
export class VisionError extends Error {
  constructor(
    readonly code: 'sizes-differ' | 'empty-picture' | 'bad-parameter',
    message: string,
  ) {
    super(message);
    this.name = 'VisionError';
  }
}
