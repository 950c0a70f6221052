import { defineConfig } from 'vitest/config';

/** The tests that need LibreOffice and the built program. */
export default defineConfig({
  test: { include: ['tests/live/**/*.live.ts'], testTimeout: 300_000, hookTimeout: 300_000 },
});
