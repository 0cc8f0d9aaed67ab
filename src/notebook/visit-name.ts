import { join } from 'node:path';
import { dateOf } from '../visit/time.ts';
import type { Visit } from '../visit/visit.ts';

/**
 * The most bytes (UTF-8) of a place in a file name. File systems take 255 bytes a name, some encrypted
 * ones 143 (from memory); the date, a copy's number and what a temporary file adds stand beside it.
 */
const MOST_BYTES = 100;

/** A place's name as a part of a file name: small letters and digits of any script, with hyphens. */
export function fileWords(name: string): string {
  const plain = name
    .normalize('NFD')
    .replace(/(?<=\p{Script=Latin})\p{Mn}+/gu, '')
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  let bytes = 0;
  const fitting = [...plain].filter((character) => {
    bytes += Buffer.byteLength(character);
    return bytes <= MOST_BYTES;
  });
  return fitting.join('').replace(/^-+|-+$/g, '');
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
