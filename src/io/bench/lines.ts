/** The lines of a terminal, a gauge or a file. A line of any length is one line, of which only a beginning is kept. */
import { StringDecoder } from 'node:string_decoder';

/** Far more than any reading or note takes. */
const KEPT = 4_096;

const END = /[\r\n]/g;

/** Line ends are LF, CR or both: gauges that type send what their maker chose. A last line without an end counts. */
export async function* linesOf(input: AsyncIterable<Uint8Array | string>): AsyncGenerator<string> {
  const decoder = new StringDecoder('utf8');
  let line = '';
  let isFirst = true;
  /** Whether a line ended with CR just before: an LF behind it ends no line of its own. */
  let afterReturn = false;
  for await (const chunk of input) {
    let text = typeof chunk === 'string' ? chunk : decoder.write(Buffer.from(chunk));
    if (text === '') continue;
    if (isFirst) text = text.replace(/^\ufeff/, '');
    isFirst = false;
    let from: number = afterReturn && text[0] === '\n' ? 1 : 0;
    afterReturn = false;
    for (const { index } of text.matchAll(END)) {
      if (index < from) continue;
      yield (line + text.slice(from, Math.min(index, from + KEPT))).slice(0, KEPT);
      line = '';
      from = index + 1;
      if (text[index] === '\r' && text[from] === '\n') from += 1;
      else afterReturn = text[index] === '\r' && from === text.length;
    }
    line = (line + text.slice(from, from + KEPT)).slice(0, KEPT);
  }
  if (line !== '') yield line;
}
