/** One book of `oilgap report`. */
import { basename } from 'node:path';
import { isAllGood } from '../engine/assess/assess.js';
import { runBook } from '../engine/run-book.js';
import { inputFiles } from '../io/input-digest.js';
import { openFile } from '../io/open-file.js';
import { programName } from '../io/program-name.js';
import { printPdf } from '../io/report/print-pdf.js';
import { reportPage } from '../io/report/report-page.js';
import { reportPath } from '../io/report/report-path.js';
import { writeFileWhole } from '../io/write-file.js';
import type { JobResult, ReportBookOptions } from './jobs.js';
import { EXIT, print, progress } from './messages.js';
import { sayFindings } from './say-findings.js';

export async function reportBook(
  path: string,
  { out, chromium, paper, seconds }: ReportBookOptions,
): Promise<JobResult> {
  const target = reportPath(path, 'html', out);
  const name = basename(path);
  progress(`${name}: reading`);
  const opened = await openFile(path);
  const files = await inputFiles(path, opened);
  const assessment = await runBook(opened.model, {
    seconds,
    onProgress: (message) => progress(`${name}: ${message}`),
  });
  progress(`${name}: writing`);
  const html = reportPage(assessment, { program: programName(), files });
  await writeFileWhole(target, new TextEncoder().encode(html));
  const written = [target];
  if (chromium !== undefined) {
    const printed = reportPath(path, 'pdf', out);
    await writeFileWhole(printed, await printPdf(html, chromium, paper));
    written.push(printed);
  }
  sayFindings(assessment);
  print([path, ...written.map((file) => `  written: ${file}`)].join('\n'));
  return { code: isAllGood(assessment) ? EXIT.good : EXIT.findings, documents: [] };
}
