import { distanceBetween } from '../ground/distance.ts';
import { generalised } from '../ground/generalise.ts';
import type { Position } from '../ground/position.ts';
import type { Entry } from '../visit/entry.ts';
import type { Visit } from '../visit/visit.ts';
import { type Hiding, WITHHELD } from './hiding.ts';

/** A position as it may be given out, in WGS 84 decimal degrees. */
export interface GivenSpot {
  latitude: number;
  longitude: number;
  /** Metres around it in which the true place surely lies, never 0; null where nobody knows. */
  uncertainty: number | null;
  /** Degrees of the grid to which it was rounded; null where it stands as held. */
  precision: number | null;
}

/** What may be told of where a visit was. */
export interface GivenPlace {
  locality: string;
  habitat: string;
  spot: GivenSpot | null;
  informationWithheld: string;
  dataGeneralizations: string;
}

/** Metres to which the reach of the entries is rounded up, so that it tells no distance. */
const REACH_STEP = 1000;

/** A text as it may be given out of a visit: word for word, or the word that it was withheld. */
export function givenText(text: string | null, hiding: Hiding | null): string {
  if (text === null || text === '') return '';
  return hiding === null ? text : WITHHELD;
}

/** What may be told of where a visit was, with the reasons for what may not. */
export function givenPlace(visit: Visit, hiding: Hiding | null): GivenPlace {
  const { place } = visit;
  const spot = spotOf(visit, hiding);
  const shared = {
    locality: givenText(place?.name ?? null, hiding),
    habitat: givenText(place?.habitat ?? null, hiding),
    spot,
  };
  if (hiding === null) return { ...shared, informationWithheld: '', dataGeneralizations: '' };
  return {
    ...shared,
    informationWithheld: `place name, exact coordinates and notes withheld: ${hiding.reason}`,
    dataGeneralizations: spot
      ? `coordinates rounded to ${spot.precision} degrees, the same for the whole visit`
      : '',
  };
}

function spotOf(visit: Visit, hiding: Hiding | null): GivenSpot | null {
  const held = visit.place?.position ?? null;
  const uncertainty = visit.place?.uncertainty ?? null;
  if (hiding === null) return held && { ...plain(held), uncertainty, precision: null };
  const entries = visit.entries.flatMap(({ position }) => position ?? []);
  const from = held ?? entries[0];
  if (!from || hiding.decimals === 0) return null;
  const coarse = generalised(from, hiding.decimals);
  const metres = coarse.uncertainty + (uncertainty ?? 0) + reach(from, entries);
  return {
    latitude: Number(coarse.latitude),
    longitude: Number(coarse.longitude),
    uncertainty: Math.ceil(metres),
    precision: 10 ** -hiding.decimals,
  };
}

/**
 * Metres from the place within which all entries lie. They get no cells of their own: two neighbouring
 * cells would tell that the place lies at the line between them.
 */
function reach(from: Position, entries: readonly Position[]): number {
  const farthest = Math.max(0, ...entries.map((each) => distanceBetween(from, each)));
  return Math.ceil(farthest / REACH_STEP) * REACH_STEP;
}

/** Where an entry was, as it may be given: its own position, or the visit's. */
export function spotOfEntry(
  { position }: Pick<Entry, 'position'>,
  visit: GivenSpot | null,
  hiding: Hiding | null,
): GivenSpot | null {
  if (position === null || hiding !== null) return visit;
  return { ...plain(position), uncertainty: null, precision: null };
}

function plain({ latitude, longitude }: Position): Position {
  return { latitude, longitude };
}
