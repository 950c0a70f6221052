/** Which cell formats of a workbook show dates. */
import { isBuiltInDateFormat, isDateFormat } from './date-format.js';
import type { OpcPackage } from './opc-package.js';
import { attr, childOf, childrenOf } from './xml-tree.js';

/** For each cell format, by its index (a cell's `s`): does it show a date or a time? */
export async function readDateStyles(pkg: OpcPackage, part: string | undefined): Promise<boolean[]> {
  if (part === undefined) return [];
  const tree = await pkg.tree(part);
  const codes = new Map(
    childrenOf(childOf(tree, 'numFmts'), 'numFmt').map((f) => [
      Number(attr(f, 'numFmtId')),
      attr(f, 'formatCode') ?? '',
    ]),
  );
  return childrenOf(childOf(tree, 'cellXfs'), 'xf').map((xf) => {
    const id = Number(attr(xf, 'numFmtId') ?? 0);
    const code = codes.get(id);
    return code === undefined ? isBuiltInDateFormat(id) : isDateFormat(code);
  });
}
