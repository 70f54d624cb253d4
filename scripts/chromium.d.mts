export function chromiumPath(): string | undefined;
export function ensureChromium(): Promise<string | undefined>;
