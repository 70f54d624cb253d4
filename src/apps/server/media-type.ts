import { getMimeType } from 'hono/utils/mime';

/** The media type that a file's name stands for. */
export const mediaTypeOf = (path: string): string => getMimeType(path) ?? 'application/octet-stream';
