/** What is run side by side, each a whole process from file to file. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { measure, type Taken } from './measure.js';

/** 0 is "always calculate": stored values of an .xlsx file are else believed. */
const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`;

export class Peers {
  private readonly profile: string;

  /** @param program the folder of the built program; `folder` takes what is written. */
  constructor(
    private readonly program: string,
    private readonly bench: string,
    private readonly folder: string,
  ) {
    this.profile = join(folder, 'profile');
    mkdirSync(join(this.profile, 'user'), { recursive: true });
    writeFileSync(join(this.profile, 'user', 'registrymodifications.xcu'), SETTINGS);
  }

  makeBook(rows: number, file: string, ...more: string[]): void {
    measure([process.execPath, join(this.bench, 'make-book.js'), String(rows), file, ...more]);
  }

  help(): Taken {
    return measure([process.execPath, join(this.program, 'commands/main.js'), '--help']);
  }

  /** A check ends with 1 where something is not good, which in a random list is so. */
  check(book: string, out: string): Taken {
    const main = join(this.program, 'commands/main.js');
    return measure([process.execPath, main, 'check', book, '--out', join(this.folder, out)], [0, 1]);
  }

  libreOffice(book: string): Taken {
    return measure([
      'soffice',
      `-env:UserInstallation=${pathToFileURL(this.profile).href}`,
      ...['--headless', '--norestore', '--convert-to', 'xlsx:Calc MS Excel 2007 XML'],
      ...['--outdir', join(this.folder, 'office'), book],
    ]);
  }

  streamCopy(book: string): Taken {
    return measure([
      process.execPath,
      join(this.bench, 'stream-copy.js'),
      book,
      join(this.folder, 'copy.xlsx'),
    ]);
  }
}
