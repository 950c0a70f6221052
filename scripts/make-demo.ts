/** Writes the demonstration workbooks: `node dist/scripts/make-demo.js [FOLDER]`, by default `workbooks`. */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { demoFiles } from './demo/files.js';

const folder = process.argv[2] ?? 'workbooks';
for (const [path, bytes] of await demoFiles()) {
  const file = join(folder, path);
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, bytes);
  process.stderr.write(`${file}\n`);
}
