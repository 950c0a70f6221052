/**
 * The dialogue at the bench, line by line: which spot is next, what a typed line does, what is answered. It has neither
 * terminal nor file: a line goes in, words and log entries come out. The entries have to be on the disk before the words
 * are shown.
 */
import { quoted } from '../book/problems.js';
import { noColumn } from './again.js';
import { Agenda } from './agenda.js';
import { type Answer, refused, said } from './answer.js';
import type { BenchBook, BenchSpot, TypedReading } from './bench-book.js';
import { type BenchCommand, commandHelp, parseCommand } from './commands.js';
import { spotsToAsk } from './find-spots.js';
import type { LogEntry } from './log-line.js';
import {
  readingThatStandsAlone,
  replacedText,
  speaksAgainstOthers,
  standsAloneText,
} from './older-reading.js';
import { gaugeGroup, isMoot } from './order.js';
import { placeText, type Question, questionOf } from './question.js';
import { noteAnswer, readingText, rowAnswer, zeroAnswer } from './row-answers.js';
import { type Change, Scribe } from './scribe.js';
import { Sitting } from './sitting.js';
import { nextRepeat } from './spot-columns.js';
import { doubtsAbout, leaveOutStrips, resultsAt } from './strip-spots.js';
import { readAtBench } from './typed-reading.js';

export interface DialogueOptions {
  /** ISO 8601. */
  readonly now: () => string;
  /** The log of earlier sittings: gauge and temperature go on as they were. */
  readonly log?: readonly LogEntry[];
  /** Lines come from a file: each belongs to a spot of its own, and no reading can be taken again. */
  readonly isPiped: boolean;
}

/** A longer line is neither a reading nor a note. */
const LONGEST_LINE = 500;

export class Dialogue {
  readonly agenda: Agenda;
  private readonly scribe: Scribe;
  /** Of each sheet, the first spot that was asked for. */
  private readonly firstOf = new Map<string, string>();
  /** Spots whose reading was asked for again because others spoke against it. */
  private readonly doubted = new Set<string>();
  private readonly history: (readonly Change[])[] = [];
  private doubt:
    | { readonly spot: BenchSpot; readonly reading: TypedReading; readonly typed: string }
    | undefined;

  /** @param spots what is asked for, in that order; a new reading replaces the one that a spot holds */
  constructor(
    private readonly book: BenchBook,
    spots: readonly BenchSpot[],
    private readonly options: DialogueOptions,
  ) {
    this.agenda = new Agenda(spots, (spot) => isMoot(book, spot));
    this.scribe = new Scribe(book, options.now, Sitting.after(options.log ?? [], options.now()));
  }

  question(): Question | undefined {
    const spot = this.agenda.current();
    if (!spot) return undefined;
    // What a sheet's rows lack is said at the first of its spots.
    const first = this.firstOf.get(spot.sheet) ?? placeText(spot);
    this.firstOf.set(spot.sheet, first);
    const left = this.agenda.left().length;
    return questionOf(this.book, this.scribe, spot, { left, isFirst: first === placeText(spot) });
  }

  /** What one typed line does. */
  answer(line: string): Answer {
    const text = line.trim();
    if (line.length > LONGEST_LINE) {
      return this.notRead(
        `found a line of more than ${LONGEST_LINE} characters; expected a reading or a letter`,
      );
    }
    if (/\p{Cc}/u.test(text)) {
      return this.notRead(`found control characters in ${quoted(text)}; expected a reading or a letter`);
    }
    if (text === '') return said();
    const command = parseCommand(text);
    // No reading of a file can be taken again: a doubtful one is left out, and the next line is of the next spot.
    const dropped = this.options.isPiped && command?.command !== 'keep' ? this.dropDoubt() : [];
    const answer = command ? this.command(command.command, command.argument) : this.reading(text);
    return { ...answer, refused: [...dropped, ...answer.refused] };
  }

  /** What is to be said where no line follows. */
  end(): readonly string[] {
    return this.dropDoubt();
  }

  private dropDoubt(): string[] {
    const { doubt } = this;
    if (!doubt) return [];
    this.doubt = undefined;
    this.agenda.skip(doubt.spot);
    return [
      `${placeText(doubt.spot)}: ${quoted(doubt.typed)} was left out; measure it again, or put a line such as "k REASON" behind it`,
    ];
  }

  private command(command: BenchCommand, argument: string): Answer {
    switch (command) {
      case 'undo':
        return this.undo();
      case 'skip':
        return this.skip();
      case 'jump':
        return this.jump(argument);
      case 'second':
        return this.second();
      case 'keep':
        return this.keep(argument);
      case 'note':
        return this.note(argument);
      case 'temperature':
        return rowAnswer(this.scribe, this.agenda.current(), 'Temperature', argument);
      case 'gauge':
        return rowAnswer(this.scribe, this.agenda.current(), 'Gauge', argument);
      case 'zero':
        return this.zero(argument);
      case 'help':
        return said(...commandHelp());
      case 'write':
      case 'quit':
        return { ...said(), action: command };
    }
  }

  private reading(text: string): Answer {
    const spot = this.agenda.current();
    if (!spot) return refused('nothing is left to ask for; type q, or j and a part');
    const setTo = this.scribe.settingFor(spot);
    const reading = readAtBench(this.book.table(spot.sheet)!, spot.row, spot.column, text, setTo);
    if ('fault' in reading) return this.notRead(`${placeText(spot)}: ${reading.fault}`);
    const doubts = doubtsAbout(this.book, spot, reading);
    if (doubts.length === 0) return this.accept(spot, reading, text, '');
    this.doubt = { spot, reading, typed: text };
    return refused(
      `${placeText(spot)}: ${readingText(reading, this.book)} is doubtful: ${doubts.join('; ')}`,
      ...(this.options.isPiped
        ? []
        : ['measure again and type the reading, or keep it with a reason: k REASON']),
    );
  }

  /** A line that is no reading; one from a file still stands for its spot, which is left out. */
  private notRead(why: string): Answer {
    if (!this.options.isPiped) return refused(why);
    const dropped = this.dropDoubt();
    const spot = this.agenda.current();
    if (!spot) return refused(...dropped, why);
    this.agenda.skip(spot);
    return refused(...dropped, `${why}; ${placeText(spot)} was left out`);
  }

  private accept(spot: BenchSpot, reading: TypedReading, typed: string, reason: string): Answer {
    this.doubt = undefined;
    const { entries, changes } = this.scribe.reading(spot, reading, typed, reason);
    this.history.push(changes);
    this.agenda.done(spot);
    leaveOutStrips(this.book, this.agenda, spot);
    const next = this.agenda.current();
    const isPause = next !== undefined && gaugeGroup(this.book, next) !== gaugeGroup(this.book, spot);
    const shown = `${placeText(spot)}: ${readingText(reading, this.book)}`;
    return {
      said: [shown, ...resultsAt(this.book, spot), ...this.askOlder(spot)],
      refused: [],
      entries,
      ...(isPause && { action: 'write' as const }),
    };
  }

  private skip(): Answer {
    const spot = this.agenda.current();
    if (!spot) return refused('nothing is left to skip');
    this.doubt = undefined;
    this.agenda.skip(spot);
    return said(`${placeText(spot)}: skipped`);
  }

  private keep(reason: string): Answer {
    const { doubt } = this;
    if (!doubt) return refused('no reading is in doubt; k keeps one that was doubted');
    if (reason === '') return refused('expected a reason behind k, such as: k worn at the web');
    return this.accept(doubt.spot, doubt.reading, doubt.typed, reason);
  }

  private undo(): Answer {
    const { doubt } = this;
    this.doubt = undefined;
    const gone = doubt ? [`${quoted(doubt.typed)} is gone`] : [];
    if (doubt && !speaksAgainstOthers(this.book, doubt, this.history.at(-1)?.[0]?.spot)) {
      return said(`${gone[0]}; u once more takes the last reading back`);
    }
    const changes = this.history.pop();
    if (!changes) return refused('nothing of this sitting is left to take back');
    const entries = this.scribe.takeBack(changes);
    const { spot, header } = changes[0]!;
    if (header) return { ...said(`${spot.sheet} ${spot.part}: the note is taken back`), entries };
    this.agenda.reopen(spot);
    return { ...said(...gone, `${placeText(spot)}: taken back`), entries };
  }

  private jump(argument: string): Answer {
    const found = spotsToAsk(this.book, argument);
    if ('fault' in found) return refused(found.fault);
    const { spots: wanted } = found;
    this.doubt = undefined;
    this.agenda.goTo(wanted);
    return said(...(found.isOneSpot ? wanted.flatMap((spot) => replacedText(this.book, spot)) : []));
  }

  private second(): Answer {
    const last = this.history.findLast(([change]) => !change!.header)?.[0]?.spot;
    if (!last) return refused('no spot was read yet; r reads the last one once more');
    const column = nextRepeat(this.book, last);
    if (!column) return refused(noColumn(last));
    this.agenda.ask([{ ...last, column }]);
    return said();
  }

  private note(words: string): Answer {
    const spot = this.agenda.current() ?? this.history.at(-1)?.[0]?.spot;
    const written = noteAnswer(this.scribe, spot, words);
    if ('refused' in written) return written;
    this.history.push(written.changes);
    return { ...said(`${spot!.sheet} ${spot!.part}: noted`), entries: written.entries };
  }

  private zero(text: string): Answer {
    // A doubtful reading was understood by the zero as it was.
    this.doubt = undefined;
    return zeroAnswer(this.book, this.scribe, this.agenda.current(), text);
  }

  /** Asks for a reading again that three others of its part speak against, once. */
  private askOlder(last: BenchSpot): string[] {
    const found = readingThatStandsAlone(this.book, last);
    if (!found || this.doubted.has(placeText(found.spot))) return [];
    this.doubted.add(placeText(found.spot));
    this.agenda.ask([found.spot]);
    return [standsAloneText(this.book, found)];
  }
}
