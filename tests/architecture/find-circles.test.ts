import { expect, test } from 'vitest';
import { findCircles } from './find-circles.js';

type Sources = Readonly<Record<string, string>>;
const circlesOf = (sources: Sources) => findCircles(new Map(Object.entries(sources)));

const OF_TWO = 'src/io/a.ts imports src/io/b.ts, which imports src/io/a.ts: a circle of imports';
const OF_THREE =
  'src/io/a.ts imports src/io/b.ts, which imports src/io/c.ts, which imports src/io/a.ts: a circle of imports';

test.each<[string, Sources, string]>([
  ['of two', { 'src/io/a.ts': "import './b.js';", 'src/io/b.ts': "import { a } from './a.js';" }, OF_TWO],
  [
    'of two, whichever is read first',
    { 'src/io/b.ts': "import { a } from './a.js';", 'src/io/a.ts': "import './b.js';" },
    OF_TWO,
  ],
  [
    'of three',
    {
      'src/io/a.ts': "import { b } from './b.js';",
      'src/io/b.ts': "import { c } from './c.js';",
      'src/io/c.ts': "import { a } from './a.js';",
    },
    OF_THREE,
  ],
  [
    'through a type import',
    { 'src/io/a.ts': "import type { B } from './b.js';", 'src/io/b.ts': "import { type A } from './a.js';" },
    OF_TWO,
  ],
  [
    'through a type by import()',
    { 'src/io/a.ts': "let b: import('./b.js').B;", 'src/io/b.ts': "import './a.js';" },
    OF_TWO,
  ],
  [
    'through `export … from`',
    { 'src/io/a.ts': "export { b } from './b.js';", 'src/io/b.ts': "export * from './a.js';" },
    OF_TWO,
  ],
  [
    'through import()',
    { 'src/io/a.ts': "await import('./b.js');", 'src/io/b.ts': "import './a.js';" },
    OF_TWO,
  ],
  [
    'across folders',
    { 'functions/a.ts': "import '../src/maths/b.js';", 'src/maths/b.ts': "import '../../functions/a.js';" },
    'functions/a.ts imports src/maths/b.ts, which imports functions/a.ts: a circle of imports',
  ],
  ['of a file with itself', { 'src/io/a.ts': "import { a } from './a.js';" }, 'src/io/a.ts imports itself'],
])('a circle %s is one sentence', (_, sources, sentence) => {
  expect(circlesOf(sources)).toEqual([sentence]);
});

test('of a file in two circles the shorter is told; the longer where a file lies in no other', () => {
  const circles = circlesOf({
    'src/io/a.ts': "import './b.js';",
    'src/io/b.ts': "import './a.js'; import './c.js';",
    'src/io/c.ts': "import './a.js';",
  });
  expect(circles).toEqual([OF_TWO, OF_THREE]);
});

test('files beside a circle are not named', () => {
  const circles = circlesOf({
    'src/io/0.ts': "import './a.js';",
    'src/io/a.ts': "import './b.js';",
    'src/io/b.ts': "import './a.js'; import './z.js';",
    'src/io/z.ts': 'export const z = 1;',
  });
  expect(circles).toEqual([OF_TWO]);
});

test('two ways to one file, packages and words in comments are no circle', () => {
  const circles = circlesOf({
    'src/io/a.ts': "import './b.js'; import './c.js'; import 'a';",
    'src/io/b.ts': "import './c.js'; import 'node:fs';",
    'src/io/c.ts': "// import './a.js'\nexport const text = `import './a.js'`;",
    'src/io/away.ts': "import './missing.js';",
  });
  expect(circles).toEqual([]);
});
