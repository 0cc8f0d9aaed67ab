import { gridPosition } from '../../src/ground/grid-position.ts';
import { readPosition } from '../../src/ground/read-position.ts';

/** A position as typed, with all grids; fails where it can't be read. */
export function read(text: string) {
  const found = readPosition(text, gridPosition);
  if ('problem' in found) throw new Error(`${text}: ${found.problem}`);
  return found;
}

/** Why it can't be read; empty where it can. */
export function problem(text: string): string {
  const found = readPosition(text, gridPosition);
  return 'problem' in found ? found.problem : '';
}
