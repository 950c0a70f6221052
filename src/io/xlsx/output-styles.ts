/** The formats of output as cell formats of the user's workbook. */
import type { OutputFormat } from '../../engine/workbook-model.js';
import { emptyStyles } from './empty-styles.js';
import { FORMATS } from './formats.js';
import type { Namespaces } from './graft-sheet.js';
import { mergeStyles } from './merge-styles.js';
import type { OutputWorkbook } from './output-workbook.js';
import { partOfKind, type WorkbookParts } from './workbook-package.js';
import { attribute, localName, TagScanner } from './xml-scan.js';

const STYLES_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml';

export interface OutputStyles {
  /** The user's cell format for an output format. */
  readonly ofFormat: (format: OutputFormat) => number;
  /** The user's cell format for one of the output workbook's. */
  readonly ofIndex: (index: number) => number;
}

/** Adds to the user's styles what the given formats need, and nothing that is there already. */
export async function addOutputStyles(
  { pkg, workbook }: WorkbookParts,
  output: OutputWorkbook,
  formats: ReadonlySet<OutputFormat>,
  namespaces: Namespaces,
): Promise<OutputStyles> {
  const sourceIndex = await indexOfFormats(output);
  const wanted = new Set([...formats].map((format) => sourceIndex.get(format)!));
  let indexOf: ReadonlyMap<number, number> = new Map();
  if ([...wanted].some((index) => index !== 0)) {
    const part = (await partOfKind(pkg, workbook, 'styles')) ?? (await addStylesPart());
    const merged = mergeStyles(await pkg.text(part), await output.parts.pkg.text(output.styles), wanted);
    indexOf = merged.indexOf;
    await pkg.setText(part, merged.xml);
  }
  const ofIndex = (index: number) => indexOf.get(index) ?? 0;
  return { ofIndex, ofFormat: (format) => ofIndex(sourceIndex.get(format)!) };

  async function addStylesPart(): Promise<string> {
    const folder = workbook.slice(0, workbook.lastIndexOf('/') + 1);
    const part = `${folder}styles.xml`;
    await pkg.replaceText(part, emptyStyles(namespaces.main));
    await pkg.addOverride(part, STYLES_TYPE);
    await pkg.addRelationship(workbook, `${namespaces.relationships}/styles`, 'styles.xml');
    return part;
  }
}

/** The first sheet of the output workbook has a cell of each format, in order. */
async function indexOfFormats({ parts }: OutputWorkbook): Promise<Map<OutputFormat, number>> {
  const xml = await parts.pkg.text(parts.sheets[0]!.part!);
  const styles: number[] = [];
  const scanner = new TagScanner(xml);
  for (let tag = scanner.next(); tag; tag = scanner.next()) {
    if (tag.kind !== 'close' && localName(tag.name) === 'c') {
      styles.push(Number(attribute(xml.slice(tag.start, tag.end), 's') ?? 0));
    }
  }
  return new Map(FORMATS.map((format, at) => [format, styles[at]!]));
}
