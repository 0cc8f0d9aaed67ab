import node, { type FileHandle } from 'node:fs/promises';
import type { Disk } from '../../src/notebook/disk.ts';

/** What goes wrong, at the call with this number (from 0). */
export interface Fault {
  at: number;
  /**
   * An error's code instead of the call, or after it was done all the same, or at every call from there
   * on until `mend`; or the end of the program: nothing happens any more.
   */
  kind: 'error' | 'error after' | 'errors' | 'crash' | 'crash after';
  code: string;
}

export interface FaultyDisk {
  disk: Disk;
  /** Name and path of each call so far. */
  calls: string[];
  /** Has the fault come? */
  struck(): boolean;
  mend(): void;
}

/** A real disk on which one call goes wrong. Flushing is counted and left out: only a power cut needs it. */
export function faultyDisk(fault: Fault | null): FaultyDisk {
  const calls: string[] = [];
  let crashed = false;
  let mended = false;

  async function through<T>(
    name: string,
    path: string,
    call: () => Promise<T>,
    half: () => Promise<unknown> = async () => {},
  ): Promise<T> {
    const at = calls.push(`${name} ${path}`) - 1;
    const error = Object.assign(new Error(`${fault?.code}: ${name}`), { code: fault?.code });
    if (crashed) throw error;
    if (fault === null || mended || at < fault.at || (at > fault.at && fault.kind !== 'errors'))
      return call();
    crashed = fault.kind.startsWith('crash');
    if (fault.kind.endsWith('after')) {
      const result = await call();
      if (isHandle(result)) await result.close();
    } else await half();
    throw error;
  }

  const disk = new Proxy(node, {
    get(_, name: keyof Disk) {
      return (...given: unknown[]) => {
        const call = node[name] as (...given: unknown[]) => Promise<unknown>;
        const path = String(given[0]);
        const half = () =>
          name === 'writeFile'
            ? node.writeFile(path, String(given[1]).slice(0, 20), given[2] as object)
            : Promise.resolve();
        const done = through(name, path, () => call(...given), half);
        return name === 'open' ? done.then((file) => faulty(file as FileHandle, path)) : done;
      };
    },
  });

  /** Writes may break off in the middle; what the program opened is closed, whatever is told. */
  const faulty = (file: FileHandle, path: string) => ({
    writeFile: (text: string) =>
      through(
        'write',
        path,
        () => file.writeFile(text),
        () => file.writeFile(text.slice(0, text.length / 2)),
      ),
    sync: () => through('sync', path, async () => {}),
    close: async () => {
      await file.close();
      await through('close', path, async () => {});
    },
  });

  return {
    disk: disk as unknown as Disk,
    calls,
    struck: () => fault !== null && calls.length > fault.at,
    mend: () => {
      mended = true;
    },
  };
}

function isHandle(result: unknown): result is FileHandle {
  return typeof result === 'object' && result !== null && 'close' in result;
}
