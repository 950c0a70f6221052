/** The sheet Fits where the book has none of the user's. */
import { inUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part-result.js';
import { type TypedName, typedName } from '../book/typed-name.js';
import type { Evaluated } from '../columns/evaluate.js';
import { widthOf } from '../columns/result-column.js';
import { resultColumns } from '../columns/result-headers.js';
import { FIT_SLOTS, FITS } from '../input-sheets/fits.js';
import { columnsOf } from '../input-sheets/input-sheet.js';
import { isOnFits } from '../kinds/kind-of-fit.js';
import type { OutputCell, OutputFormat, OutputSheet } from '../workbook-model.js';
import { headerRow, MADE_BY_WIDTH } from './own-sheet.js';
import { againAndAgain } from './plain-cells.js';

function nameCell(name: TypedName | undefined): OutputCell | undefined {
  return name === undefined || name === '' ? undefined : { value: name, format: 'name' };
}

export function fitsSheet(assessment: Assessment, { cells, layout }: Evaluated): OutputSheet {
  const unit = assessment.book.setup.lengthUnit;
  const inputs = columnsOf(FITS).map(({ header }) => header);
  const results = resultColumns(FITS.name);
  const header = headerRow([...inputs, ...results.map((column) => column.header)]);
  const { book } = assessment;
  const partName = (part: PartResult | undefined) => part && typedName(book, part.row, 'Part', part.row.name);
  const given = ({ engine, fit, position, kind, parts, source }: FitResult): (OutputCell | undefined)[] => {
    const { row } = parts[kind.leader]!;
    const names = [
      typedName(book, row, 'Engine', engine),
      fit,
      typedName(book, row, 'Position', position),
      ...FIT_SLOTS.map((slot) => partName(parts[slot])),
    ];
    const strip: OutputCell | undefined =
      source?.strip === undefined
        ? undefined
        : { value: inUnit(source.strip, unit), format: unit === 'in' ? 'in' : 'mm' };
    return [...names.map((name) => nameCell(name)), strip];
  };
  const onFits = assessment.fits.filter(({ kind }) => isOnFits(kind));
  const computed = cells.get(FITS.name)!;
  const rows = againAndAgain(function* () {
    yield header;
    for (const [at, fit] of onFits.entries()) {
      const row = given(fit);
      for (const { column, cell } of computed.ofRow(at)) row[column] = cell;
      yield row;
    }
  });
  return {
    name: layout.sheetName(FITS.name).replace(/ \(oilgap\)$/, ''),
    rows,
    formats: new Set<OutputFormat>(['header', 'name', unit === 'in' ? 'in' : 'mm', ...computed.formats]),
    widths: [...inputs.map(() => 11), ...results.map((column) => widthOf(column, unit, true)), MADE_BY_WIDTH],
    headerRows: 1,
    landscape: true,
  };
}
