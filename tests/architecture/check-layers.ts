/** Finds breaches of the layers and their rooms: which file may import what, and how long a file may be. */
import { posix } from 'node:path';
import ts from 'typescript';

/** A file imports only from its own layer or from one before it. */
export const LAYERS = ['src/maths', 'functions', 'src/engine', 'src/io', 'src/commands'] as const;

export const MAX_LINES = 250;

/** Which layers may import a package; a package that is not named here is free. */
const PACKAGE_HOMES: ReadonlyMap<string, readonly string[]> = new Map([
  ['exceljs', ['src/io']],
  ['highs', ['src/maths']],
  ['jstat', ['src/maths']],
  ['hyperformula', ['src/engine', 'src/io', 'src/commands']],
]);

/** What each room of a layer, or file, may not import: results are computed, then worded, then laid out. */
const CLOSED_ROOMS: readonly { readonly from: string; readonly rooms: readonly string[] }[] = [
  { from: 'src/engine/assess/', rooms: ['src/engine/words/', 'src/engine/columns/', 'src/engine/sheets/'] },
  { from: 'src/engine/words/', rooms: ['src/engine/columns/', 'src/engine/sheets/'] },
  ...[
    'src/engine/columns/',
    'src/engine/explain/',
    'src/io/report/',
    'src/io/terminal/',
    'src/commands/book-json.ts',
    'src/commands/book-summary.ts',
  ].map((from) => ({ from, rooms: ['src/engine/sheets/'] })),
];

/**
 * The breaches of these files, one sentence each.
 *
 * `sources` holds the text of every file by its path from the project's root, with forward slashes.
 */
export function findBreaches(sources: ReadonlyMap<string, string>): string[] {
  const breaches: string[] = [];
  for (const [path, text] of sources) {
    const lines = countLines(text);
    if (lines > MAX_LINES) breaches.push(`${path} has ${lines} lines; ${MAX_LINES} are allowed`);
    const layer = layerOf(path);
    if (layer === undefined) {
      breaches.push(`${path} lies in no layer; the layers are ${LAYERS.join(', ')}`);
      continue;
    }
    for (const specifier of importsOf(path, text)) {
      const breach = breachOf(path, layer, specifier);
      if (breach) breaches.push(`${path} ${breach}`);
    }
  }
  return breaches;
}

/**
 * What a file imports: import and export declarations, `import()` and `require()` calls, types by
 * `import('…')`. Undefined stands for a call whose argument is no plain text.
 */
export function importsOf(path: string, text: string): (string | undefined)[] {
  const found: (string | undefined)[] = [];
  const add = (node: ts.Node | undefined) =>
    found.push(node && ts.isStringLiteralLike(node) ? node.text : undefined);
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier);
    else if (ts.isExportDeclaration(node) && node.moduleSpecifier) add(node.moduleSpecifier);
    else if (ts.isExternalModuleReference(node)) add(node.expression);
    else if (ts.isImportTypeNode(node)) {
      add(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined);
    } else if (ts.isCallExpression(node) && isImportCall(node)) add(node.arguments[0]);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.Latest));
  return found;
}

function isImportCall({ expression }: ts.CallExpression): boolean {
  return (
    expression.kind === ts.SyntaxKind.ImportKeyword ||
    (ts.isIdentifier(expression) && expression.text === 'require')
  );
}

function breachOf(path: string, layer: string, specifier: string | undefined): string | undefined {
  if (specifier === undefined) return 'imports a module whose name is computed; it has to be plain text';
  if (/^\.{0,2}\//.test(specifier) || specifier === '.' || specifier === '..') {
    const target = posix.join(posix.dirname(path), specifier);
    const targetLayer = layerOf(target);
    if (targetLayer === undefined) return `imports ${target}, which lies in no layer`;
    if (rank(targetLayer) > rank(layer))
      return `imports ${target}: ${layer} may not import from ${targetLayer}`;
    const room = CLOSED_ROOMS.filter(({ from }) => path.startsWith(from))
      .flatMap(({ rooms }) => rooms)
      .find((closed) => target.startsWith(closed));
    return room === undefined ? undefined : `imports ${target}: it may not import from ${room}`;
  }
  const name = packageOf(specifier);
  if (name === 'oilgap' || name.startsWith('#')) {
    return `imports ${specifier}; inside the project a file is imported by its relative path`;
  }
  const homes = PACKAGE_HOMES.get(name);
  if (!homes || homes.includes(layer)) return undefined;
  return `imports ${name}, which only ${homes.join(', ')} may`;
}

function layerOf(path: string): string | undefined {
  return LAYERS.find((layer) => path.startsWith(`${layer}/`));
}

function rank(layer: string): number {
  return (LAYERS as readonly string[]).indexOf(layer);
}

/** `hyperformula/i18n/languages` is of hyperformula, `@scope/name/file` of @scope/name. */
function packageOf(specifier: string): string {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

function countLines(text: string): number {
  return text.split('\n').length - (text.endsWith('\n') ? 1 : 0);
}
