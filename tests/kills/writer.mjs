/** Writes one file again and again, until it is killed: every byte is that of its round, and tells the length. */
import { writeFileWhole } from '../../dist/src/io/write-file.js';

const [path] = process.argv.slice(2);
for (let round = 0; ; round++) {
  const byte = round % 251;
  await writeFileWhole(path, Buffer.alloc(50_000 * (1 + (byte % 30)), byte), { isPreviousKept: true });
  if (round === 1) process.stdout.write('ready');
}
