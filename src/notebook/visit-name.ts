import { join } from 'node:path';
import { dateOf } from '../visit/time.ts';
import type { Visit } from '../visit/visit.ts';

const LONGEST = 60;

/** A place's name as a part of a file name: small letters and digits of any script, with hyphens. */
export function fileWords(name: string): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-');
  return [...plain]
    .slice(0, LONGEST)
    .join('')
    .replace(/^-+|-+$/g, '');
}

/**
 * Where a visit's file belongs in the notebook: `visits/2026/2026-11-14-sallow-mere.json`, with
 * `-2`, `-3` … behind for further visits of that day and place.
 */
export function visitPath(notebook: string, visit: Visit, copy = 1): string {
  const date = dateOf(visit.start);
  const place = visit.place === null ? '' : fileWords(visit.place.name);
  const name = `${date}-${place === '' ? 'visit' : place}${copy > 1 ? `-${copy}` : ''}.json`;
  return join(notebook, 'visits', date.slice(0, 4), name);
}
