import { readDegrees } from './degrees.ts';
import { readGeoUri } from './geo-uri.ts';
import { type GridReference, readGridReference } from './grid-reference.ts';
import type { PositionOrProblem } from './position.ts';

/** Turns a grid reference into a position. Its libraries take long to load: the shell hands it in. */
export type Grids = (reference: GridReference) => PositionOrProblem;

/** The forms that are read, for a sentence. */
const FORMS =
  'decimal degrees (51.12, -2.85), degrees and minutes (51°7.2′N 2°51′W), geo:51.12,-2.85, a national grid (ST 401 285, H 123 456), MGRS or UTM';

/**
 * Reads a position in any of the forms above as WGS 84; what was typed is for the caller to keep.
 * While the grids are not loaded (`null`), a grid reference is told to be typed again.
 */
export function readPosition(text: string, grids: Grids | null): PositionOrProblem {
  const typed = text.trim();
  return readForm(typed, grids) ?? { problem: `"${typed}" is no position. Write ${FORMS}.` };
}

function readForm(typed: string, grids: Grids | null): PositionOrProblem | null {
  const read = readGeoUri(typed) ?? readDegrees(typed);
  if (read !== null) return read;
  const reference = readGridReference(typed);
  if (reference === null || 'problem' in reference) return reference;
  return (
    grids?.(reference) ?? {
      problem: `"${typed}" is on a grid, and the grids are still being loaded: press Enter again in a moment.`,
    }
  );
}

/** A name with a position behind it. */
export interface NamedPosition {
  name: string;
  /** The position word for word. */
  verbatim: string;
  read: PositionOrProblem;
}

/** No position is longer than this. */
const LONGEST = 80;
const START = /(?<=^|[\s,@])[^\s,@]/g;

/**
 * Finds the position at the end of a line that begins with a name: `Sallow Mere 51.12, -2.85`,
 * `Sallow Mere ST 401 285`. A grid reference without a comma or an @ before it must be in capitals and
 * have figures enough that no name is taken for one (`Gate SE 12`, `Field B 1234`). Null where there
 * is none.
 */
export function positionBehind(text: string, grids: Grids | null): NamedPosition | null {
  for (const { index } of text.matchAll(START)) {
    const verbatim = text.slice(index);
    if (verbatim.length > LONGEST) continue;
    const before = text.slice(0, index);
    const read =
      readGeoUri(verbatim) ??
      readDegrees(verbatim) ??
      (isGrid(verbatim, /[,@]\s*$/.test(before)) ? readForm(verbatim, grids) : null);
    if (read !== null) return { name: before.replace(/[\s,@]+$/, ''), verbatim, read };
  }
  return null;
}

/** Does a text hold a grid reference, so that the grids must be loaded to read it as a place? */
export function needsGrids(text: string): boolean {
  let asked = false;
  positionBehind(text, () => {
    asked = true;
    return { problem: '' };
  });
  return asked;
}

/** Fewest figures of a reference that is taken for one behind a name, by the kind of its letters. */
const ENOUGH = [
  { form: /^[A-Z]{2}\s*(\d[\d ]*)$/, figures: 4 },
  { form: /^[A-Z]\s*(\d[\d ]*)$/, figures: 6 },
  { form: /^\d{1,2}\s*[C-X]\s*[A-Z]{2}\s*(\d[\d ]*)$/, figures: 4 },
  { form: /^\d{1,2}\s*(?:[A-Z]|north|south)\s+(\d{6}(?:\.\d+)?[\sEMN,]+\d{1,8}.*)$/i, figures: 6 },
];
/** As many fewer will do where a comma or an @ stands before it. */
const FEWER_APART = 2;
/** With so many figures it is meant for a reference, also where it can't be one. */
const SURELY_MEANT = 5;

function isGrid(text: string, apart: boolean): boolean {
  return ENOUGH.some(({ form, figures }) => {
    const found = form.exec(apart ? text.toUpperCase() : text)?.[1];
    const many = found?.replace(/\D/g, '').length ?? 0;
    if (many === 0 || many < figures - (apart ? FEWER_APART : 0)) return false;
    const reference = many < SURELY_MEANT ? readGridReference(text) : null;
    return many >= SURELY_MEANT || (reference !== null && !('problem' in reference));
  });
}
