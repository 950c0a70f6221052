/** Line drawings as a drawing part of a sheet (DrawingML, ISO 29500-1, 20.5): black lines and words, no fills. */
import type { Drawing, Point, Shape } from '../../engine/blank/shapes.js';
import type { OpcPackage } from './opc-package.js';
import { relationshipsPart } from './part-names.js';
import { SHEET_LEAVES } from './sheet-pieces.js';
import { escapeAttribute, escapeXml } from './xml-text.js';
import { TextEdits } from './xml-tree.js';

const EMU_PER_MM = 36_000;
const LINE_EMU = 9_525;
/** Hundredths of a point. */
const TEXT_SIZE = 900;

const DRAWING_TYPE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/drawing';
const CONTENT_TYPE = 'application/vnd.openxmlformats-officedocument.drawing+xml';
const NAMESPACES =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" ' +
  'xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"';
const EMPTY_RELATIONSHIPS =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
  '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>';

/**
 * Adds a drawing to a sheet that has none; its upper left corner lies on a cell.
 * @param number of the drawing in the package, from 1
 */
export async function addDrawing(
  pkg: OpcPackage,
  sheetPart: string,
  drawing: Drawing,
  at: { readonly row: number; readonly column: number },
  number: number,
): Promise<void> {
  const part = `xl/drawings/drawing${number}.xml`;
  await pkg.setText(part, drawingXml(drawing, at));
  await pkg.addOverride(part, CONTENT_TYPE);
  if (!pkg.has(relationshipsPart(sheetPart))) {
    await pkg.setText(relationshipsPart(sheetPart), EMPTY_RELATIONSHIPS);
  }
  const id = await pkg.addRelationship(sheetPart, DRAWING_TYPE, `../drawings/drawing${number}.xml`);
  const edits = new TextEdits(await pkg.text(sheetPart));
  edits.append(await pkg.tree(sheetPart, SHEET_LEAVES), `<drawing r:id="${id}"/>`);
  await pkg.setText(sheetPart, edits.apply());
}

const emu = (mm: number) => Math.round(mm * EMU_PER_MM);

function drawingXml(drawing: Drawing, { row, column }: { row: number; column: number }): string {
  const [width, height] = [emu(drawing.width), emu(drawing.height)];
  const from = `<xdr:from><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>${emu(3)}</xdr:rowOff></xdr:from>`;
  const frame = `<a:off x="0" y="0"/><a:ext cx="${width}" cy="${height}"/><a:chOff x="0" y="0"/><a:chExt cx="${width}" cy="${height}"/>`;
  const shapes = drawing.shapes.map((shape, place) => shapeXml(shape, place + 3)).join('');
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<xdr:wsDr ${NAMESPACES}><xdr:oneCellAnchor>${from}` +
    `<xdr:ext cx="${width}" cy="${height}"/><xdr:grpSp><xdr:nvGrpSpPr>` +
    `<xdr:cNvPr id="2" name="Where to measure" descr="${escapeAttribute(drawing.description)}"/><xdr:cNvGrpSpPr/></xdr:nvGrpSpPr>` +
    `<xdr:grpSpPr><a:xfrm>${frame}</a:xfrm></xdr:grpSpPr>${shapes}</xdr:grpSp><xdr:clientData/></xdr:oneCellAnchor></xdr:wsDr>`
  );
}

function shapeXml(shape: Shape, id: number): string {
  switch (shape.kind) {
    case 'line':
      return lineXml(shape.from, shape.to, shape.isDashed === true, id);
    case 'circle': {
      const { centre, radius } = shape;
      const box = boxXml({ x: centre.x - radius, y: centre.y - radius }, 2 * radius, 2 * radius);
      return outlineXml(box, 'ellipse', '', id, shape.isDot === true);
    }
    case 'half circle': {
      const { centre, radius, half } = shape;
      const box = boxXml({ x: centre.x - radius, y: centre.y - radius }, 2 * radius, 2 * radius);
      // 60000ths of a degree, clockwise from the right.
      const [from, to] = half === 'upper' ? [10_800_000, 0] : [0, 10_800_000];
      const angles = `<a:gd name="adj1" fmla="val ${from}"/><a:gd name="adj2" fmla="val ${to}"/>`;
      return outlineXml(box, 'arc', angles, id, false);
    }
    case 'rectangle':
      return outlineXml(boxXml(shape.corner, shape.width, shape.height), 'rect', '', id, false);
    case 'text':
      return textXml(shape, id);
  }
}

function boxXml({ x, y }: Point, width: number, height: number, flip = ''): string {
  return `<a:xfrm${flip}><a:off x="${emu(x)}" y="${emu(y)}"/><a:ext cx="${emu(width)}" cy="${emu(height)}"/></a:xfrm>`;
}

/** A plain face that every system has under some name. */
const FONT = '<a:latin typeface="Arial"/>';
const BLACK = '<a:solidFill><a:srgbClr val="000000"/></a:solidFill>';

function penXml(isDashed: boolean): string {
  return `<a:ln w="${LINE_EMU}">${BLACK}${isDashed ? '<a:prstDash val="dash"/>' : ''}</a:ln>`;
}

function geometryXml(name: string, adjustments = ''): string {
  return `<a:prstGeom prst="${name}"><a:avLst>${adjustments}</a:avLst></a:prstGeom>`;
}

function outlineXml(
  box: string,
  geometry: string,
  adjustments: string,
  id: number,
  isFilled: boolean,
): string {
  return (
    `<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="${id}" name="line ${id}"/><xdr:cNvSpPr/></xdr:nvSpPr>` +
    `<xdr:spPr>${box}${geometryXml(geometry, adjustments)}${isFilled ? BLACK : '<a:noFill/>'}${penXml(false)}</xdr:spPr></xdr:sp>`
  );
}

function lineXml(from: Point, to: Point, isDashed: boolean, id: number): string {
  const corner = { x: Math.min(from.x, to.x), y: Math.min(from.y, to.y) };
  const isRising = (to.x - from.x) * (to.y - from.y) < 0;
  const box = boxXml(corner, Math.abs(to.x - from.x), Math.abs(to.y - from.y), isRising ? ' flipV="1"' : '');
  return (
    `<xdr:cxnSp macro=""><xdr:nvCxnSpPr><xdr:cNvPr id="${id}" name="line ${id}"/><xdr:cNvCxnSpPr/></xdr:nvCxnSpPr>` +
    `<xdr:spPr>${box}${geometryXml('line')}${penXml(isDashed)}</xdr:spPr></xdr:cxnSp>`
  );
}

function textXml(shape: Extract<Shape, { kind: 'text' }>, id: number): string {
  const align = shape.align === 'centre' ? 'ctr' : 'l';
  const font = `lang="en-GB" sz="${TEXT_SIZE}"`;
  const paragraphs = shape.text
    .split('\n')
    .map(
      (words) =>
        `<a:p><a:pPr algn="${align}"/>${words === '' ? '' : `<a:r><a:rPr ${font}>${BLACK}${FONT}</a:rPr><a:t>${escapeXml(words)}</a:t></a:r>`}` +
        `<a:endParaRPr ${font}/></a:p>`,
    );
  return (
    `<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="${id}" name="words ${id}"/><xdr:cNvSpPr txBox="1"/></xdr:nvSpPr>` +
    `<xdr:spPr>${boxXml(shape.corner, shape.width, shape.height)}${geometryXml('rect')}<a:noFill/><a:ln><a:noFill/></a:ln></xdr:spPr>` +
    `<xdr:txBody><a:bodyPr wrap="square" lIns="0" tIns="0" rIns="0" bIns="0"/><a:lstStyle/>${paragraphs.join('')}</xdr:txBody></xdr:sp>`
  );
}
