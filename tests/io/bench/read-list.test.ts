import { expect, test } from 'vitest';
import { readListText } from '../../../src/io/bench/read-list.js';

const short = (text: string) =>
  readListText(text).map(({ line, sheet, part, spot, value, reason }) =>
    [line, sheet, part, spot, value, reason].join('|'),
  );

test.each([
  [
    'headers in any order and case, other columns passed over',
    'Time;VALUE;spot;Part\n8:00;42,003;A 0;J1\n',
    ['2||J1|A 0|42,003|'],
  ],
  ['sheet and reason', 'Sheet\tPart\tSpot\tValue\tReason\nRods\t1\tA 0\t45\tworn', ['2|Rods|1|A 0|45|worn']],
  ['commas, with a quoted decimal comma', 'Part,Spot,Value\nJ1,A 0,"42,003"\n', ['2||J1|A 0|42,003|']],
  [
    'no headers: three cells in each line',
    'J1;A 0;42,003\n\nJ1;Wall 1;1.5\n',
    ['1||J1|A 0|42,003|', '3||J1|Wall 1|1.5|'],
  ],
  ['no headers, by commas', 'J1,A 0,42.003\n', ['1||J1|A 0|42.003|']],
  ['values alone', '42,003\n\n 42.004 mm \n', ['1||||42,003|', '3||||42.004 mm|']],
  [
    'a quote that nothing closes',
    'Part;Spot;Value\n"J1;A 0;42\nJ2;A 0;43\n',
    ['2||J1;A 0;42|||', '3||J2|A 0|43|'],
  ],
  ['nothing', '\n\n', []],
])('%s', (_, text, rows) => {
  expect(short(text)).toEqual(rows);
});
