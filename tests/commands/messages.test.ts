import { afterEach, expect, test, vi } from 'vitest';
import { endProgress, progress } from '../../src/commands/messages.js';

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
