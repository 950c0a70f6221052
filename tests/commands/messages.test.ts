import { afterEach, expect, test, vi } from 'vitest';
import { endProgress, progress, say } from '../../src/commands/messages.js';

const { isTTY } = process.stderr;
afterEach(() => {
  process.stderr.isTTY = isTTY;
  vi.restoreAllMocks();
});

/** What a call writes to stderr, on a terminal or not. */
function written(onTerminal: boolean, call: () => void): string {
  process.stderr.isTTY = onTerminal;
  let text = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((chunk) => {
    text += String(chunk);
    return true;
  });
  call();
  return text;
}

test('progress is one line of a terminal, which the next replaces', () => {
  const text = written(true, () => {
    progress('stock.xlsx: complete engines: found 5, at most 6');
    endProgress();
  });
  expect(text).toBe('\r\u001b[Kstock.xlsx: complete engines: found 5, at most 6\r\u001b[K');
});

test('progress stays out of a file or a pipe', () => {
  expect(written(false, () => progress('reading'))).toBe('');
  expect(written(false, endProgress)).toBe('');
});

test('a message of more lines than ten says how many are left out', () => {
  const lines = Array.from({ length: 25 }, (_, at) => `line ${at + 1}`);
  const shown = written(false, () => say(lines.join('\n')))
    .trimEnd()
    .split('\n');
  expect(shown).toEqual([...lines.slice(0, 9), 'and 16 lines more']);
  expect(written(false, () => say(lines.slice(0, 10).join('\n')))).toBe(`${lines.slice(0, 10).join('\n')}\n`);
});
