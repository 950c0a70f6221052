import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { linesOf } from '../../../src/io/bench/lines.js';

async function read(...chunks: readonly (string | Uint8Array)[]): Promise<string[]> {
  async function* input() {
    yield* chunks;
  }
  const lines: string[] = [];
  for await (const line of linesOf(input())) lines.push(line);
  return lines;
}

test.each([
  ['LF', ['42.1\n42.2\n'], ['42.1', '42.2']],
  ['CR LF, also between two chunks', ['42.1\r\n42.2\r', '\n42.3'], ['42.1', '42.2', '42.3']],
  ['CR', ['42.1\r42.2\r'], ['42.1', '42.2']],
  ['blank lines', ['\n\n42.1\r\r\n'], ['', '', '42.1', '']],
  ['no end at the end', ['42.1'], ['42.1']],
  ['nothing', [], []],
  ['a byte order mark', ['\ufeff42.1\n'], ['42.1']],
])('%s', async (_, chunks, lines) => {
  expect(await read(...chunks)).toEqual(lines);
});

test('lines are the same wherever their text is cut', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.string({ unit: fc.constantFrom('\r', '\n', '4', 'µ', '😀') }),
      fc.integer({ min: 1, max: 5 }),
      async (text, size) => {
        const bytes = Buffer.from(text);
        const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, at) =>
          bytes.subarray(at * size, (at + 1) * size),
        );
        expect(await read(...chunks)).toEqual(await read(bytes));
        const plain = text.split(/\r\n|\r|\n/);
        if (plain.at(-1) === '') plain.pop();
        expect(await read(bytes)).toEqual(plain);
      },
    ),
    { seed: 6 },
  );
});

describe('a line without end', () => {
  test('takes no memory, and the next one is read', async () => {
    const chunk = '4'.repeat(65_536);
    const lines = await read(...Array.from({ length: 64 }, () => chunk), '\n42.1\n');
    expect(lines.map((line) => line.length)).toEqual([4_096, 4]);
  });
});
