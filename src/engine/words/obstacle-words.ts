/** Why a journal that could be used has no set, in words. */
import type { StockJournal } from '../../maths/matching/stock.js';
import type { Assessment } from '../assess/assess.js';
import type { Context } from '../assess/context.js';
import type { PartResult } from '../assess/part-result.js';
import { reasonOutOfStock } from '../assess/stock.js';
import { countText, lengthText } from '../assess/words.js';
import { nameKey } from '../book/names.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';

/** How many parts are named one by one. */
const NAMED = 5;

export function obstacleWords(journal: StockJournal, assessment: Assessment): string {
  const { parts, book, stock, context } = assessment;
  const isMain = journal.caseBore !== undefined;
  const ofType = ({ row }: PartResult) => nameKey(row.engineType ?? '') === journal.engineType;
  switch (assessment.obstacles.get(journal)) {
    case 'no rod':
      return `no rod of its engine type can be used${unused(parts.of(RODS.name).filter(ofType), context)}`;
    case 'no mass':
      return 'no rod of its engine type has a Mass, and Mass spread asks for it';
    case 'no upper shell':
      return `no upper shell of its engine type and fit can be used${unusedShells('upper')}`;
    case 'no lower shell':
      return `no lower shell of its engine type and fit can be used${unusedShells('lower')}`;
    case 'half difference': {
      const most = stock.stock.kinds.find(
        ({ fit, engineType }) => fit === journal.fit && engineType === journal.engineType,
      );
      const limit = lengthText(most!.halfDifference!, book.setup.lengthUnit);
      return `refused by Half difference: every pair of shells that would fit differs by more than ${limit}`;
    }
    case 'shells in': {
      const { row } = stock.cases.get(journal)!;
      return `case ${row.name} was measured with its shells in, which give no allowed fit: measure it bare to choose others`;
    }
    case 'no fit':
      return isMain
        ? 'no pair of shells of the stock gives an allowed fit'
        : 'no rod and pair of shells of the stock give an allowed fit';
    case 'mass spread':
      return "the rods left that would fit differ from the crank's others by more than Mass spread";
    default:
      return isMain
        ? 'no pair of shells is left that gives an allowed fit: those that would are in other sets'
        : 'no rod and pair of shells are left that give an allowed fit: those that would are in other sets';
  }

  function unusedShells(half: 'upper' | 'lower'): string {
    return unused(
      parts
        .of(SHELLS.name)
        .filter(
          (part) =>
            ofType(part) &&
            nameKey(part.row.fit) === journal.fit &&
            (part.row.half === half || part.row.half === 'either' || part.row.half === undefined),
        ),
      context,
    );
  }
}

/** Parts of the kind that there are, and why each is not used. */
function unused(parts: readonly PartResult[], context: Context): string {
  if (parts.length === 0) return ': there is none';
  const named = parts
    .slice(0, NAMED)
    .map((part) => `${part.row.name} ${reasonOutOfStock(part, context) ?? 'Half is blank'}`);
  const more = parts.length - named.length;
  return `: ${named.join(', ')}${more > 0 ? ` and ${countText(more, 'other')}` : ''}`;
}
