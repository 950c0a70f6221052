/** The temporary files that are being written just now, so that nothing of them stays when a run is broken off. */
import { rmSync } from 'node:fs';

const paths = new Set<string>();
let onMade: (path: string) => Promise<void> = () => Promise.resolve();
let onGone: (path: string) => void = () => undefined;

/** Has each temporary file told before it is made, and when it is renamed or removed. */
export function watchTemporaries(made: (path: string) => Promise<void>, gone: (path: string) => void): void {
  onMade = made;
  onGone = gone;
}

export async function noteTemporary(path: string): Promise<void> {
  paths.add(path);
  await onMade(path);
}

export function forgetTemporary(path: string): void {
  paths.delete(path);
  onGone(path);
}

/** Removes them all at once, for a process that is about to end. */
export function removeTemporaries(): void {
  for (const path of paths) rmSync(path, { force: true });
  paths.clear();
}
