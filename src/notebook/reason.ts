/** The system's error codes that a user may meet, in words. */
const REASONS: Record<string, string> = {
  EACCES: 'you may not read and write there',
  EPERM: 'you may not read and write there',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full: free some space',
  EDQUOT: 'your share of the disk is full: free some space',
  EFBIG: 'the file would be larger than the disk or your limits allow',
  EIO: 'the disk has a fault',
  EEXIST: 'a file stands in its way',
  ENOTDIR: 'a file stands in its way',
  ENOENT: 'it is not there',
  EISDIR: 'it is a folder',
  ELOOP: 'it is a link that leads back to itself',
  ENAMETOOLONG: 'its name is too long for the disk',
  EBUSY: 'another program is using it',
  EMFILE: 'too many files are open',
  ESTALE: 'the disk is not within reach',
  ETIMEDOUT: 'the disk is not within reach',
};

/** Why a file could not be read or written, in words. */
export function reasonWords(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}
