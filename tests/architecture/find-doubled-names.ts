/** Finds names that two files export: functions, classes, interfaces and type aliases at the top of a file. */
import ts from 'typescript';

/**
 * The names that two or more of these files export, one sentence each. A re-export is none.
 *
 * `sources` holds the text of every file by its path from the project's root, with forward slashes.
 */
export function findDoubledNames(sources: ReadonlyMap<string, string>): string[] {
  const files = new Map<string, string[]>();
  for (const [path, text] of sources) {
    for (const name of exportedNames(path, text)) files.set(name, [...(files.get(name) ?? []), path]);
  }
  return [...files].flatMap(([name, paths]) => {
    if (paths.length < 2) return [];
    const others = paths.slice(0, -1).join(', ');
    return [`${name} is exported by ${others} and ${paths.at(-1)}; give each its own name`];
  });
}

/** The names under which a file exports what it declares itself. */
export function exportedNames(path: string, text: string): Set<string> {
  const { statements } = ts.createSourceFile(path, text, ts.ScriptTarget.Latest);
  const declared = new Set<string>();
  const exported = new Set<string>();
  for (const statement of statements) {
    for (const name of namesOf(statement)) {
      declared.add(name);
      if (isExported(statement)) exported.add(name);
    }
  }
  for (const { name, propertyName } of statements.flatMap(listedExports)) {
    if (declared.has((propertyName ?? name).text)) exported.add(name.text);
  }
  return exported;
}

/** What a statement declares that has to have a name of its own; a constant only where it holds a function or class. */
function namesOf(statement: ts.Statement): string[] {
  if (ts.isVariableStatement(statement)) {
    return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
      ts.isIdentifier(name) && initializer && isFunctionOrClass(initializer) ? [name.text] : [],
    );
  }
  const isNamed =
    ts.isFunctionDeclaration(statement) ||
    ts.isClassDeclaration(statement) ||
    ts.isInterfaceDeclaration(statement) ||
    ts.isTypeAliasDeclaration(statement);
  return isNamed && statement.name ? [statement.name.text] : [];
}

function isFunctionOrClass(node: ts.Expression): boolean {
  return ts.isArrowFunction(node) || ts.isFunctionExpression(node) || ts.isClassExpression(node);
}

function isExported(statement: ts.Statement): boolean {
  return (
    ts.canHaveModifiers(statement) &&
    ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true
  );
}

/** The names of `export { … }`; those of `export { … } from` are declared elsewhere. */
function listedExports(statement: ts.Statement): readonly ts.ExportSpecifier[] {
  if (!ts.isExportDeclaration(statement) || statement.moduleSpecifier) return [];
  const { exportClause } = statement;
  return exportClause && ts.isNamedExports(exportClause) ? exportClause.elements : [];
}
