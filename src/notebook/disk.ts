import node from 'node:fs/promises';

/**
 * The calls by which visits, kept states and locks reach the disk: those of `node:fs/promises`. A test
 * or a bench puts another disk in its place, one that fails, breaks off or is slow.
 */
export type Disk = Pick<
  typeof node,
  | 'chmod'
  | 'copyFile'
  | 'link'
  | 'mkdir'
  | 'open'
  | 'readFile'
  | 'readdir'
  | 'realpath'
  | 'rename'
  | 'rm'
  | 'rmdir'
  | 'stat'
  | 'utimes'
  | 'writeFile'
>;

/** The real one. */
export const DISK: Disk = node;
