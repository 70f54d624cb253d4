import { runnerImport } from 'vite';
const { module: m } = await runnerImport('/tmp/w/mine/salvor/try-boards.ts', { logLevel: 'error', configFile: false });
