/** Fasteners on the page: orders, torques in two units, boxes, and the caution above them. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { FASTENER_CAUTION } from '../../../src/engine/caution.js';
import { reportPage } from '../../../src/io/report/report-page.js';
import { bookOf, type Plain, table } from '../../engine/book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const pageOf = async (...rows: Cells[]) => {
  const book = bookOf({ Fasteners: table(...rows.map((row) => ({ Engine: 'E1', Group: 'head', ...row }))) });
  return reportPage(await assessBook(book, { seconds: 1 }), { program: 'oilgap 0', files: [] });
};

/** The tables of the section as their captions and the cells of their rows. */
function tablesOf(page: string): [string, string[][]][] {
  const section = page.slice(page.indexOf('id="fasteners"'), page.indexOf('</section>'));
  return [...section.matchAll(/<caption>(.*?)<thead>(.*?)<\/table>/g)].map(([, caption, rest]) => [
    caption!,
    rest!
      .split('<tr>')
      .slice(1)
      .map((row) =>
        row
          .split(/<t[hd][^>]*>/)
          .slice(1)
          .map((cell) => cell.replace('<tbody>', '')),
      ),
  ]);
}

test('a table a group, in the order of tightening', async () => {
  const page = await pageOf(
    { Number: 2, Thread: 'M10', Torque: '10–11 kgf·m', Angle: 90 },
    { Number: 1, Thread: 'M10', Torque: '98–108', 'Torque as printed (lb·ft)': '72–80', Renew: 'always' },
    { Group: 'caps', Torque: 8 },
  );
  expect(tablesOf(page)).toEqual([
    [
      'Engine E1, head',
      [
        [
          'Tighten',
          'Loosen',
          'Thread',
          'Torque, N·m',
          'Torque, lb·ft',
          'As typed',
          'Angle',
          'Status',
          'Loosened',
          'Tightened',
          'Turned',
        ],
        ['1', '2', 'M10', '98–108', '72–80', '', '', 'renew', '☐', '☐', ''],
        ['2', '1', 'M10', '98.1–107.9', '72.3–79.6', '10–11 kgf·m', '90°', 'no limits', '☐', '☐', '☐'],
      ],
    ],
    [
      'Engine E1, caps',
      [
        ['Tighten', 'Torque, N·m', 'Torque, lb·ft', 'Status', 'Loosened', 'Tightened'],
        ['no number', '8', '5.90', 'no limits', '☐', '☐'],
      ],
    ],
  ]);
});

test('the caution stands above the first list', async () => {
  const page = await pageOf({ Number: 1 });
  const at = page.indexOf('oilgap gives no torque of its own');
  expect(at).toBeGreaterThan(page.indexOf('id="fasteners"'));
  expect(at).toBeLessThan(page.indexOf('Engine E1, head'));
  for (const sentence of FASTENER_CAUTION) expect(page).toContain(sentence.replaceAll('`', ''));
});

test('an order that is not whole is not turned round', async () => {
  const [[, rows]] = tablesOf(await pageOf({ Number: 1 }, { Number: 3 })) as [[string, string[][]]];
  expect(rows[0]).not.toContain('Loosen');
});
