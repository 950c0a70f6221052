import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { findBreaches, importsOf, type LAYERS, MAX_LINES } from './check-layers.js';
import { findCircles } from './find-circles.js';
import { findDoubledNames } from './find-doubled-names.js';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

function projectSources(): Map<string, string> {
  const sources = new Map<string, string>();
  for (const folder of ['src', 'functions']) {
    for (const name of readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })) {
      if (!/\.[cm]?tsx?$/.test(name)) continue;
      const path = `${folder}/${name.replaceAll('\\', '/')}`;
      sources.set(path, readFileSync(join(ROOT, path), 'utf8'));
    }
  }
  return sources;
}

describe('the project', () => {
  const sources = projectSources();

  test('is read: files and imports of the layers are found', () => {
    for (const layer of [
      'src/maths',
      'functions',
      'src/engine',
      'src/io',
    ] satisfies (typeof LAYERS)[number][]) {
      const files = [...sources].filter(([path]) => path.startsWith(`${layer}/`));
      expect(files.flatMap(([path, text]) => importsOf(path, text)).length, layer).toBeGreaterThan(0);
    }
  });

  test('keeps to its layers', () => {
    expect(findBreaches(sources)).toEqual([]);
  });

  test('has no circle of imports', () => {
    expect(findCircles(sources)).toEqual([]);
  });

  test('exports no name from two files', () => {
    expect(findDoubledNames(sources)).toEqual([]);
  });
});

describe('the checker', () => {
  const breachesOf = (path: string, text: string) => findBreaches(new Map([[path, text]]));

  test.each([
    ['the layer itself', 'src/maths/a.ts', "import { b } from './b.js';"],
    ['a layer before', 'functions/a.ts', "import { b } from '../src/maths/b.js';"],
    ['all layers before', 'src/commands/a.ts', "import '../io/b.js'; import '../../functions/c.js';"],
    ['exceljs in io', 'src/io/xlsx/a.ts', "import ExcelJS from 'exceljs';"],
    ['highs and jstat in maths', 'src/maths/a.ts', "import 'jstat'; await import('highs');"],
    ['hyperformula in the engine', 'src/engine/a.ts', "import { b } from 'hyperformula/i18n/languages';"],
    ['other packages and Node', 'src/io/a.ts', "import 'saxes'; import 'node:fs';"],
    [
      'words in comments and texts',
      'functions/a.ts',
      "// import 'hyperformula'\nexport const a = `import 'highs'`;",
    ],
  ])('allows %s', (_, path, text) => {
    expect(breachesOf(path, text)).toEqual([]);
  });

  test.each([
    ['maths from functions', 'src/maths/a.ts', "import { b } from '../../functions/b.js';", 'functions'],
    [
      'functions from the engine',
      'functions/a.ts',
      "import type { B } from '../src/engine/b.js';",
      'src/engine',
    ],
    ['the engine from io', 'src/engine/a.ts', "export * from '../io/b.js';", 'src/io'],
    ['io from commands', 'src/io/xlsx/a.ts', "await import('../../commands/b.js');", 'src/commands'],
    ['a type by import()', 'src/maths/a.ts', "let b: import('../io/b.js').B;", 'src/io'],
    ['a type by import() of all', 'src/maths/a.ts', "let b: typeof import('../io/b.js');", 'src/io'],
    ['by require', 'src/maths/a.ts', "import b = require('../io/b.js');", 'src/io'],
  ])('reports %s', (_, path, text, from) => {
    const [first, ...others] = breachesOf(path, text);
    expect(first).toMatch(new RegExp(`^${path} imports .*: .* may not import from ${from}$`));
    expect(others).toEqual([]);
  });

  test.each([
    ['src/engine/assess/a.ts', '../words/b.js', 'src/engine/words/'],
    ['src/engine/assess/a.ts', '../columns/b.js', 'src/engine/columns/'],
    ['src/engine/assess/a.ts', '../sheets/b.js', 'src/engine/sheets/'],
    ['src/engine/words/a.ts', '../columns/b.js', 'src/engine/columns/'],
    ['src/engine/words/a.ts', '../sheets/b.js', 'src/engine/sheets/'],
    ['src/engine/columns/a.ts', '../sheets/b.js', 'src/engine/sheets/'],
    ['src/engine/explain/a.ts', '../sheets/b.js', 'src/engine/sheets/'],
    ['src/io/report/a.ts', '../../engine/sheets/b.js', 'src/engine/sheets/'],
    ['src/io/terminal/a.ts', '../../engine/sheets/b.js', 'src/engine/sheets/'],
    ['src/commands/book-json.ts', '../engine/sheets/b.js', 'src/engine/sheets/'],
    ['src/commands/book-summary.ts', '../engine/sheets/b.js', 'src/engine/sheets/'],
  ])('reports %s that imports %s', (path, target, room) => {
    const [first, ...others] = breachesOf(path, `import type { B } from '${target}';`);
    expect(first).toMatch(new RegExp(`^${path} imports .*/b\\.js: it may not import from ${room}$`));
    expect(others).toEqual([]);
  });

  test.each([
    ['src/engine/words/a.ts', '../assess/b.js'],
    ['src/engine/columns/a.ts', '../words/b.js'],
    ['src/engine/sheets/a.ts', '../columns/b.js'],
    ['src/commands/check-book.ts', '../engine/sheets/b.js'],
  ])('allows %s that imports %s', (path, target) => {
    expect(breachesOf(path, `import '${target}';`)).toEqual([]);
  });

  test.each([
    ['hyperformula in functions', 'functions/a.ts', "import 'hyperformula';", 'imports hyperformula'],
    ['a part of it', 'functions/a.ts', "import 'hyperformula/i18n/languages';", 'imports hyperformula'],
    [
      'hyperformula in maths',
      'src/maths/a.ts',
      "import type { B } from 'hyperformula';",
      'imports hyperformula',
    ],
    ['exceljs in commands', 'src/commands/a.ts', "import 'exceljs';", 'imports exceljs'],
    ['highs in the engine', 'src/engine/a.ts', "await import('highs');", 'imports highs'],
    ['jstat in functions', 'functions/a.ts', "require('jstat');", 'imports jstat'],
    ['the package by its own name', 'functions/a.ts', "import 'oilgap/functions';", 'relative path'],
    ['a computed name', 'src/io/a.ts', 'await import(name);', 'computed'],
    ['a file outside the layers', 'src/io/a.ts', "import '../../tests/b.js';", 'no layer'],
    ['a file in no layer', 'src/a.ts', '', 'no layer'],
    ['a long file', 'src/io/a.ts', '\n'.repeat(MAX_LINES + 1), `${MAX_LINES + 1} lines`],
    ['a long file without its last line end', 'src/io/a.ts', `${'\n'.repeat(MAX_LINES)}a`, 'lines'],
  ])('reports %s', (_, path, text, words) => {
    const breaches = breachesOf(path, text);
    expect(breaches).toHaveLength(1);
    expect(breaches[0]).toContain(path);
    expect(breaches[0]).toContain(words);
  });

  test('allows a file of just the greatest length', () => {
    expect(breachesOf('src/io/a.ts', '\n'.repeat(MAX_LINES))).toEqual([]);
  });

  test('reports every breach of every file', () => {
    const sources = new Map([
      ['src/maths/a.ts', "import '../engine/b.js';\nimport 'exceljs';"],
      ['functions/a.ts', "import '../src/commands/b.js';"],
    ]);
    expect(findBreaches(sources)).toHaveLength(3);
  });
});
