import { defineConfig } from 'vitest/config';

/** The tests that need an installed Chromium. */
export default defineConfig({
  test: { include: ['tests/pages/**/*.pages.ts'], testTimeout: 60_000, hookTimeout: 60_000 },
});
