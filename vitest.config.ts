import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['src/**/*.test.ts'],
          exclude: ['src/**/*.browser.test.ts'],
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      { test: { name: 'checks', include: ['checks/**/*.check.ts'], testTimeout: 120_000, hookTimeout: 120_000 } },
      {
        test: {
          name: 'browser',
          include: ['checks/browser/**/*.browser.ts'],
          testTimeout: 180_000,
          hookTimeout: 180_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
