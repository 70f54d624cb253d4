import { spawn } from 'node:child_process';

/** The command that opens an address on this system; undefined where there is no screen to open it on. */
export function browserCommand(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string | undefined>>,
): readonly [string, ...string[]] | undefined {
  if (platform === 'darwin') return ['open'];
  if (platform === 'win32') return ['cmd', '/c', 'start', '""'];
  return env.DISPLAY || env.WAYLAND_DISPLAY ? ['xdg-open'] : undefined;
}

/** Opens an address in the person's browser where that is possible; where not, the printed address has to do. */
export function openBrowser(url: string): void {
  const command = browserCommand(process.platform, process.env);
  if (!command) return;
  const [program, ...args] = command;
  const child = spawn(program, [...args, url], { detached: true, stdio: 'ignore' });
  child.on('error', () => undefined);
  child.unref();
}
