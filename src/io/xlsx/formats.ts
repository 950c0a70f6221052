/** How the formats of output look. Words and numbers carry every meaning: no fills, no colours. */
import { FORMAT_DECIMALS, type OutputFormat } from '../../engine/workbook-model.js';

export interface FormatLook {
  /** A format code (ISO 29500-1, 18.8.31). */
  readonly numberFormat?: string;
  readonly isBold?: boolean;
  readonly alignment?: Alignment;
  readonly hasLineBelow?: boolean;
}

interface Alignment {
  readonly horizontal?: 'left' | 'right';
  readonly indent?: number;
  readonly wrapText?: boolean;
}

const WRAPPED: Alignment = { wrapText: true };

/** Numbers stand at the right of their cell: without room they touch the words of the next column. */
const CLEAR_OF_NEXT: Alignment = { horizontal: 'right', indent: 1 };

function number(format: OutputFormat): FormatLook {
  return { numberFormat: (0).toFixed(FORMAT_DECIMALS[format]), alignment: CLEAR_OF_NEXT };
}

export const FORMAT_LOOKS: Readonly<Record<OutputFormat, FormatLook>> = {
  plain: {},
  text: { alignment: WRAPPED },
  header: { isBold: true, alignment: WRAPPED, hasLineBelow: true },
  name: { alignment: { horizontal: 'left' } },
  mm: number('mm'),
  in: number('in'),
  whole: number('whole'),
  chance: number('chance'),
  title: { isBold: true },
};

export const FORMATS = Object.keys(FORMAT_LOOKS) as OutputFormat[];
