/** Whether a process that left its number somewhere is still the one that runs. */
import { readFileSync } from 'node:fs';

/** The fields of proc(5) behind the name in brackets, which may hold spaces; undefined where the system has none. */
function fieldsOf(pid: number): string[] | undefined {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  } catch {
    return undefined;
  }
}

/** The boot and the clock tick in which a process began, since numbers are used again; blank where it is not told. */
export function beginningOf(pid: number): string {
  const fields = fieldsOf(pid);
  if (!fields) return '';
  try {
    // The 22nd field is the twentieth behind the name.
    return `${readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()} ${fields[19]}`;
  } catch {
    return '';
  }
}

/** Whether a process of this machine runs; one that has ended and waits for its parent to look does not. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false;
  }
  return !['Z', 'X'].includes(fieldsOf(pid)?.[0] ?? '');
}
