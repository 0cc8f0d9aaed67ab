/** The system's error codes that a user may meet, in words. */
const REASONS: Record<string, string> = {
  EACCES: 'you may not read and write there',
  EPERM: 'you may not read and write there',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full: free some space',
  EDQUOT: 'your share of the disk is full: free some space',
  EIO: 'the disk has a fault',
  EEXIST: 'a file stands in its way',
  ENOTDIR: 'a file stands in its way',
};

/** Why a file could not be read or written, in words. */
export function reasonWords(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}
