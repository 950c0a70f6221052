/** What the record of a kind of fit says: how its parts add up, and what the fit is called and held against. */
import { FIT_SLOTS, type FitSlot } from '../input-sheets/fits.js';
import type { PartSheet } from '../input-sheets/input-sheet.js';

/** What a term is named by: a column of Fits, or the sheet on which it is measured as a whole. */
export type TermSlot = FitSlot | 'gap' | 'run-out';

export const TERM_SLOTS: readonly TermSlot[] = [...FIT_SLOTS, 'gap', 'run-out'];

/** One part of a fit. */
export interface FitTerm {
  /** The column of Fits that names the part, and the name of the term in formulas and JSON. */
  readonly slot: TermSlot;
  /** In a sentence: `upper shell`; left out where its sheet says what it is. */
  readonly noun?: string;
  /** With which sign its size enters the value of the fit. */
  readonly sign: 1 | -1;
  /** The names of the sheets that its parts stand in. */
  readonly sheets: readonly string[];
}

/** Fits that the blank sheet asks for, and makes rows of. */
export interface AskedPlaces {
  /** The word of Fit. */
  readonly fit: string;
  /** Further words of Fit at the same positions. */
  readonly also?: readonly string[];
  /** The option of the command line, without dashes. */
  readonly option: string;
  /** The question of the questionnaire, and what the option holds. */
  readonly help: string;
  /** Letter before the position in names of parts: `P1`. */
  readonly letter: string;
  /** How many places an engine has where nothing is said. */
  readonly standard: (cylinders: number) => number;
}

export interface KindOfFit {
  readonly name: string;
  /** What such a fit is, for the help. */
  readonly help: string;
  /** In the order of the arguments of its functions. */
  readonly terms: readonly FitTerm[];
  /** The custom functions of the sheet that add the terms up: the means, and either extreme. */
  readonly functions: {
    readonly clearance: string;
    readonly tightest: string;
    readonly loosest: string;
  };
  /** What the terms make, in a sentence: `bore − upper − lower − journal`. */
  readonly equation: string;
  /** Words of Fit that are of this kind. */
  readonly words: readonly string[];
  /** The names of the sheets whose words of Fit are of this kind. */
  readonly claimedBy: readonly string[];
  /** The slot whose parts make a fit each where the book has no sheet Fits. */
  readonly leader: TermSlot;
  /** Whether a leader needs an Engine and a Position to make a fit. */
  readonly leaderNeedsPlace: boolean;
  /**
   * `half-shells`: the upper and the lower slot stand for two halves of one place, which fill up by rules of their own.
   * `feelers`: it may be tried with blades, between which it lies. `dial`: it is a range of readings, and has the guards of
   * form.
   */
  readonly strategy?: 'half-shells' | 'feelers' | 'dial';
  /** What its value is called, where that is not clearance. */
  readonly valueNoun?: string;
  /** One of Clearance min and max is enough; the other is then no limit. */
  readonly needsOneLimit?: true;
  /** The sheet beside whose rows its results stand; Fits where it is left out. */
  readonly resultsOn?: string;
  /** What such a fit is where its bore was measured with its shells in. */
  readonly shellsIn?: KindOfFit;
  /** Whether Selection names a shell for the marks of its parts. */
  readonly isSelected?: true;
  /** Whether sets of its parts are sought. */
  readonly isMatched: boolean;
  /** The column of Fits with a reading that stands in for the parts. */
  readonly standIn?: 'strip';
  readonly asked: readonly AskedPlaces[];
  /** Sheets that only fits of this kind need. */
  readonly sheets?: readonly PartSheet[];
}

/** What a fit of a kind is, once its bore is known. */
export function kindWithBore(kind: KindOfFit, bore: { readonly hasShells: boolean } | undefined): KindOfFit {
  return (bore?.hasShells && kind.shellsIn) || kind;
}

/** The term of a slot; undefined where fits of the kind have none. */
export function termOf({ terms }: KindOfFit, slot: TermSlot): FitTerm | undefined {
  return terms.find((term) => term.slot === slot);
}

/** Whether the fits of a kind stand on the sheet Fits, and not beside what was measured. */
export function isOnFits({ resultsOn }: KindOfFit): boolean {
  return resultsOn === undefined;
}

/** Every word of Fit that is asked for at the same positions. */
export function fitsAsked({ fit, also = [] }: AskedPlaces): readonly string[] {
  return [fit, ...also];
}
