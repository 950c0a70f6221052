/** Packages made by hand for the tests, part by part. */
import JSZip from 'jszip';

export const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
export const REL = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const SHEET_ML = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

export interface HandMadeSheet {
  readonly name: string;
  /** The worksheet's content, or a whole part where it starts with `<?xml` or a prefixed root. */
  readonly xml: string;
  /** Within the workbook's folder. */
  readonly part?: string;
  readonly kind?: 'worksheet' | 'chartsheet';
  readonly state?: string;
  /** Relationships of the sheet: id, kind, target. */
  readonly relationships?: readonly (readonly [string, string, string])[];
}

export interface HandMade {
  readonly sheets: readonly HandMadeSheet[];
  /** Further parts with their full names. */
  readonly parts?: Readonly<Record<string, string | Uint8Array>>;
  readonly strings?: string;
  readonly styles?: string;
  /** Behind the sheets in the workbook part, as in `<definedNames>`. */
  readonly workbookTail?: string;
  /** Before the sheets. */
  readonly workbookHead?: string;
  /** Further relationships of the workbook: id, kind, target. */
  readonly relationships?: readonly (readonly [string, string, string])[];
  readonly overrides?: Readonly<Record<string, string>>;
  readonly main?: string;
  readonly rel?: string;
}

export const STYLES = `<styleSheet xmlns="${MAIN}"><numFmts count="2"><numFmt numFmtId="164" formatCode="0.000\\ \\m\\m"/><numFmt numFmtId="170" formatCode="yyyy\\-mm\\-dd"/></numFmts><fonts count="1"><font><sz val="10"/><name val="Arial"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="4"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="170" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="14" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles><dxfs count="1"><dxf><font><b/></font></dxf></dxfs></styleSheet>`;

function relationshipsXml(list: readonly (readonly [string, string, string])[], rel: string): string {
  const each = list.map(
    ([id, kind, target]) => `<Relationship Id="${id}" Type="${rel}/${kind}" Target="${target}"/>`,
  );
  return `<Relationships xmlns="${PACKAGE}/relationships">${each.join('')}</Relationships>`;
}

/** The parts in the order of the zip. */
export function handMadeParts(made: HandMade): Record<string, string | Uint8Array> {
  const main = made.main ?? MAIN;
  const rel = made.rel ?? REL;
  const sheets = made.sheets.map((s, i) => ({
    part: `worksheets/sheet${i + 1}.xml`,
    kind: 'worksheet',
    ...s,
  }));
  const overrides: Record<string, string> = {
    '/xl/workbook.xml': `${SHEET_ML}.sheet.main+xml`,
    ...Object.fromEntries(sheets.map((s) => [`/xl/${s.part}`, `${SHEET_ML}.${s.kind}+xml`])),
    ...(made.styles === undefined ? {} : { '/xl/styles.xml': `${SHEET_ML}.styles+xml` }),
    ...(made.strings === undefined ? {} : { '/xl/sharedStrings.xml': `${SHEET_ML}.sharedStrings+xml` }),
    ...made.overrides,
  };
  const types = Object.entries(overrides).map(([p, t]) => `<Override PartName="${p}" ContentType="${t}"/>`);
  const workbookRelationships: (readonly [string, string, string])[] = [
    ...sheets.map((s, i) => [`rId${i + 1}`, s.kind, s.part] as const),
    ...(made.styles === undefined ? [] : [['rIdStyles', 'styles', 'styles.xml'] as const]),
    ...(made.strings === undefined ? [] : [['rIdStrings', 'sharedStrings', 'sharedStrings.xml'] as const]),
    ...(made.relationships ?? []),
  ];
  const entries = sheets.map(
    (s, i) =>
      `<sheet name="${s.name}" sheetId="${i + 1}"${s.state ? ` state="${s.state}"` : ''} r:id="rId${i + 1}"/>`,
  );
  const parts: Record<string, string | Uint8Array> = {
    '[Content_Types].xml': `<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="bin" ContentType="application/octet-stream"/><Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>${types.join('')}</Types>`,
    '_rels/.rels': relationshipsXml([['rId1', 'officeDocument', 'xl/workbook.xml']], rel),
    'xl/workbook.xml': `<?xml version="1.0" encoding="UTF-8"?>\n<workbook xmlns="${main}" xmlns:r="${rel}">${made.workbookHead ?? ''}<sheets>${entries.join('')}</sheets>${made.workbookTail ?? ''}</workbook>`,
    'xl/_rels/workbook.xml.rels': relationshipsXml(workbookRelationships, rel),
  };
  for (const sheet of sheets) {
    const isWhole = /^<(\?xml|\w+:)/.test(sheet.xml);
    parts[`xl/${sheet.part}`] = isWhole
      ? sheet.xml
      : `<?xml version="1.0" encoding="UTF-8"?>\n<worksheet xmlns="${main}" xmlns:r="${rel}">${sheet.xml}</worksheet>`;
    if (sheet.relationships) {
      const slash = sheet.part.lastIndexOf('/') + 1;
      const name = `xl/${sheet.part.slice(0, slash)}_rels/${sheet.part.slice(slash)}.rels`;
      parts[name] = relationshipsXml(sheet.relationships, rel);
    }
  }
  if (made.styles !== undefined) parts['xl/styles.xml'] = made.styles;
  if (made.strings !== undefined)
    parts['xl/sharedStrings.xml'] = `<sst xmlns="${main}">${made.strings}</sst>`;
  return { ...parts, ...made.parts };
}

export async function zipOf(parts: Readonly<Record<string, string | Uint8Array>>): Promise<Uint8Array> {
  const zip = new JSZip();
  for (const [name, content] of Object.entries(parts)) zip.file(name, content, { createFolders: false });
  return zip.generateAsync({ type: 'uint8array', compression: 'DEFLATE' });
}

export function handMadePackage(made: HandMade): Promise<Uint8Array> {
  return zipOf(handMadeParts(made));
}

/** The unpacked bytes of every entry, in the order of the zip. */
export async function unzip(bytes: Uint8Array): Promise<Map<string, Buffer>> {
  const zip = await JSZip.loadAsync(bytes);
  const parts = new Map<string, Buffer>();
  for (const entry of Object.values(zip.files)) parts.set(entry.name, await entry.async('nodebuffer'));
  return parts;
}

export async function partText(bytes: Uint8Array, part: string): Promise<string> {
  const found = (await unzip(bytes)).get(part);
  if (!found) throw new Error(`no part ${part}`);
  return found.toString('utf8');
}
