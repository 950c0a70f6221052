/**
 * The data of the matching, without sheets and files: which bore and half-shells go on which journal, so that most
 * engines are complete.
 *
 * The lists may be in any order: the search sorts them by name first, so that the sets do not depend on the order of
 * rows. Lengths are in grains (0.001 µm).
 */
import type { FitParts } from '../clearance.js';
import type { Grain } from '../grain.js';
import type { MeasuredPart } from '../uncertainty.js';

export type Half = 'upper' | 'lower' | 'either';

/** Where a part ran before: the engine and position that its row names. */
export interface RanAt {
  readonly engine: string;
  readonly position: string;
}

/** What the parts of a fit have in common: the engine type and the Fit. */
export interface FitKind {
  readonly engineType: string;
  /** `big end`, `main`, or another word. */
  readonly fit: string;
}

/** The limits of one kind of fit. Without min or max no fit of the kind can be `in range`. */
export interface KindLimits extends FitKind {
  readonly min: Grain | undefined;
  readonly max: Grain | undefined;
  readonly serviceLimit: Grain | undefined;
  readonly aim: Grain | undefined;
  /** Greatest difference of the sizes of the two walls of a pair; undefined: any pair. */
  readonly halfDifference: Grain | undefined;
  /** Greatest difference of mass among the rods of one crank, g; undefined: any. */
  readonly massSpread: number | undefined;
}

export interface StockJournal extends FitKind {
  readonly name: string;
  readonly position: string;
  /** Undefined: the journal cannot be used (not measured, bad, beyond limits…) and leaves its engine incomplete. */
  readonly part: MeasuredPart | undefined;
  /** The case bore it sits in, for mains; undefined where any rod of the engine type may be chosen. */
  readonly caseBore: StockCaseBore | undefined;
}

export interface StockCaseBore {
  readonly name: string;
  /** Undefined: the bore cannot be used, and so neither can the journal. */
  readonly part: MeasuredPart | undefined;
  readonly ran: RanAt | undefined;
  /** Left as it was read, away from 20 °C: every fit of it is `undecided`. */
  readonly isUncorrected?: boolean | undefined;
  /** It was measured with its shells in, and takes only those. */
  readonly hasShells?: true;
}

/** One engine: all its big-end journals and the mains whose case is in the stock. */
export interface StockEngine {
  readonly name: string;
  readonly journals: readonly StockJournal[];
  /**
   * Set by the matching: not even the whole stock, with what may be bought, completes it. Undefined where it can be
   * completed, and where the time did not suffice to tell.
   */
  readonly isHopeless?: boolean | undefined;
}

/** A rod that may be used. */
export interface StockRod {
  readonly name: string;
  readonly engineType: string;
  readonly part: MeasuredPart;
  readonly mass: number | undefined;
  readonly ran: RanAt | undefined;
  /** It was measured with its shells in, and brings them. */
  readonly hasShells?: true;
}

/** Half-shells of one row, all alike. */
export interface StockShell extends FitKind {
  readonly name: string;
  readonly half: Half;
  readonly quantity: number;
  readonly part: MeasuredPart;
  readonly ran: RanAt | undefined;
  /** The place whose half-shells serve only with each other; undefined for one that is free. */
  readonly mates?: string | undefined;
  /** It is in a bore that was measured with it (brought-shells.ts). */
  readonly isBrought?: true;
}

/** Half-shells, or pairs of them, that can be bought, in any number. */
export interface StockNewShell extends FitKind {
  readonly mark: string;
  /** `pair`: sold and used as a pair. */
  readonly half: Half | 'pair';
  /** A half-shell; of a pair each of the two. */
  readonly part: MeasuredPart;
  /** Of a pair: of both halves. */
  readonly price: number;
}

export interface Stock {
  readonly kinds: readonly KindLimits[];
  readonly engines: readonly StockEngine[];
  readonly rods: readonly StockRod[];
  readonly shells: readonly StockShell[];
  /** Empty unless buying is allowed. */
  readonly newShells: readonly StockNewShell[];
  /** Confidence of the verdicts, 0.5 to 0.9999. */
  readonly confidence: number;
  readonly allowUndecided: boolean;
  /** Whether fits `within service limit` may be made. */
  readonly allowWorn: boolean;
  /** Whether what ran together and what stays go before the least distance from the aim. */
  readonly preferKeptPairs: boolean;
  /** Whether a rod that ran on a journal serves there only. */
  readonly rodsStay: boolean;
  /** Whether a new half may stand with a used one. */
  readonly newWithUsed: boolean;
}

/** A shell taken for a fit: from a row of the stock, or bought. */
export type TakenShell =
  | { readonly from: 'stock'; readonly shell: StockShell }
  | { readonly from: 'new'; readonly shell: StockNewShell };

/** One filled journal. */
export interface MatchedFit {
  readonly engine: string;
  readonly journal: StockJournal;
  /** The rod chosen, or the case bore that the journal sits in. */
  readonly bore: {
    readonly name: string;
    readonly part: MeasuredPart;
    readonly ran: RanAt | undefined;
  };
  readonly upper: TakenShell;
  readonly lower: TakenShell;
  readonly parts: FitParts<MeasuredPart>;
  readonly ranTogether: boolean;
  /** Whether its rod ran on the journal; false for a case bore. */
  readonly rodStays: boolean;
}

/**
 * Why a gap stays between what was reached and the proven best: the time ended first, so that more of it may close the
 * gap, or the search ended short of the proof with time left.
 */
export type GapReason = 'time' | 'search';

/** One aim of the matching, in the order in which they are pursued. */
export interface StageResult {
  readonly aim:
    | 'complete engines'
    /** Only where some engine is hopeless: of the others. */
    | 'filled journals of engines that could be completed'
    | 'filled journals beyond them'
    | 'price of bought shells'
    /** Only where worn fits are allowed. */
    | 'fits in range'
    | 'distance from the aim'
    | 'pairs kept together'
    | 'rods that stay';
  /** What the sets reach: a count, a price, or a length in grains. */
  readonly reached: number;
  /** The proven best. */
  readonly bound: number;
  /** Undefined where the proven best is reached. */
  readonly gapStays: GapReason | undefined;
}

export interface MatchResult {
  readonly fits: readonly MatchedFit[];
  readonly completeEngines: readonly string[];
  /** The engines that not even the whole stock, with what may be bought, completes. */
  readonly hopelessEngines: readonly string[];
  readonly stages: readonly StageResult[];
  /**
   * The coarser grid on which the stock was matched, rounded so that only allowed fits are made; undefined for none.
   */
  readonly grid: Grain | undefined;
}
