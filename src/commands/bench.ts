/** `oilgap bench BOOK`: enter readings at the bench. */
import { againSpots } from '../engine/bench/again.js';
import { spotName } from '../engine/bench/bench-book.js';
import { Dialogue } from '../engine/bench/dialogue.js';
import { blankSpots } from '../engine/bench/order.js';
import { placeText, type Question } from '../engine/bench/question.js';
import { linesOf } from '../io/bench/lines.js';
import { benchList } from './bench-list.js';
import { BenchSession } from './bench-session.js';
import { bigLetters } from './big-letters.js';
import { EXIT, printable, say } from './messages.js';
import { takeSignals } from './signals.js';

export interface BenchOptions {
  readonly plain?: boolean;
  readonly again?: boolean;
  /** A list of readings. */
  readonly from?: string;
  /** The list is written without being asked. */
  readonly yes?: boolean;
}

const COLUMNS = 80;
/** How many of the spots that are left are named at the end. */
const MOST_NAMED = 8;

export async function bench(path: string, options: BenchOptions): Promise<number> {
  const session = await BenchSession.open(path);
  try {
    return await sitting(session, options);
  } finally {
    await session.close();
  }
}

async function sitting(session: BenchSession, { plain, again, from, yes }: BenchOptions): Promise<number> {
  const { book } = session;
  const isPiped = !process.stdin.isTTY;
  const found = again ? againSpots(book) : { spots: blankSpots(book), other: [] };
  for (const sentence of found.other) say(sentence);
  if (from !== undefined) return benchList(session, from, found.spots, yes === true);
  const dialogue = new Dialogue(book, found.spots, {
    now: () => new Date().toISOString(),
    log: session.log.entries,
    isPiped,
  });
  const ask = (isSame: boolean) => {
    if (isPiped) return;
    if (!isSame) show(questionLines(dialogue.question(), plain === true));
    process.stdout.write('> ');
  };
  if (!isPiped) show(['A reading and Enter; ? lists what else may be typed.']);

  const { lines, stop } = stoppableLines();
  let number = 0;
  let isRefused = false;
  try {
    ask(false);
    for await (const line of lines) {
      number += 1;
      const { said, refused, entries, action } = dialogue.answer(line);
      // Nothing is said of a reading before it is safe.
      await session.keep(entries);
      show(said);
      for (const sentence of refused) complain(isPiped ? `line ${number}: ${sentence}` : sentence);
      if (refused.length > 0) isRefused = true;
      if (action === 'quit') break;
      if (action === 'write') await session.write(false);
      ask(refused.length > 0);
    }
  } finally {
    stop();
  }
  const dropped = dialogue.end();
  for (const sentence of dropped) complain(sentence);
  const isWritten = await session.write(true);
  const left = dialogue.agenda.left();
  show(endLines(session, left.map(placeText), isWritten));
  if (!isWritten) return EXIT.notRun;
  return left.length > 0 || (isPiped && isRefused) ? EXIT.findings : EXIT.good;
}

/** The lines of standard input up to Ctrl-C, which ends the sitting; the book is then written. */
function stoppableLines(): { lines: AsyncIterable<string>; stop: () => void } {
  const { stdin } = process;
  let isStopped = false;
  const end = () => {
    isStopped = true;
    stdin.destroy();
  };
  const giveBack = takeSignals(end);
  async function* lines() {
    try {
      yield* linesOf(stdin);
    } catch (error) {
      if (!isStopped) throw error;
    }
  }
  const stop = () => {
    giveBack();
    stdin.destroy();
  };
  return { lines: lines(), stop };
}

function show(lines: readonly string[]): void {
  const columns = process.stdout.columns ?? Number.POSITIVE_INFINITY;
  for (const line of lines) process.stdout.write(`${wrapped(printable(line), columns)}\n`);
}

function complain(sentence: string): void {
  say(wrapped(sentence, process.stderr.columns ?? Number.POSITIVE_INFINITY));
}

/** Breaks at words where a terminal would break in the middle of a figure. */
function wrapped(line: string, columns: number): string {
  if (line.length <= columns) return line;
  return line.replaceAll(new RegExp(`(.{1,${columns - 1}})(?: |$)`, 'g'), '$1\n').trimEnd();
}

function questionLines(question: Question | undefined, plain: boolean): string[] {
  if (!question) return ['', 'Everything that was asked for has been read or skipped: q ends, u takes back.'];
  const { spot, heading, notes, usual } = question;
  const name = `${spot.part} ${spotName(spot.column)}`;
  const big = plain ? [] : bigLetters(name, process.stdout.columns ?? COLUMNS);
  return [
    '',
    heading,
    ...notes,
    ...(big.length > 0 ? ['', ...big, ''] : []),
    usual === '' ? name : `${name}: ${usual}`,
  ];
}

function endLines(session: BenchSession, left: readonly string[], isWritten: boolean): string[] {
  const named = left.slice(0, MOST_NAMED).join(', ');
  const rest = left.length > MOST_NAMED ? ', and others' : '';
  return [
    session.path,
    ...(left.length > 0
      ? [`  still to measure: ${left.length}: ${named}${rest}`]
      : ['  everything that was asked for is measured']),
    ...(isWritten ? [`  written: ${session.path}`] : []),
    `  log: ${session.log.path}`,
  ];
}
