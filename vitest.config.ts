import { defineConfig } from 'vitest/config';

/** Tests that put something in the place of a module, which others shall not see. */
const REPLACING_MODULES = ['tests/io/write-file.test.ts'];

export default defineConfig({
  test: {
    // Every processor: most of the time goes to the built program, started anew for each test of a command.
    maxWorkers: '100%',
    testTimeout: 60_000,
    projects: [
      {
        extends: true,
        // The engine and its functions are loaded once a worker, not once a file.
        test: {
          name: 'shared',
          include: ['tests/**/*.test.ts'],
          exclude: REPLACING_MODULES,
          isolate: false,
        },
      },
      { extends: true, test: { name: 'replacing modules', include: REPLACING_MODULES } },
    ],
  },
});
