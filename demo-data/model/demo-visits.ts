import type { Taxon } from '../../src/taxa/taxon.ts';
import { epochOf } from '../../src/visit/time.ts';
import type { Visit } from '../../src/visit/visit.ts';
import { LAND_BIRDS } from './land-birds.ts';
import { OTHERS } from './others.ts';
import { type Listed, outing } from './outing.ts';
import { PLACES } from './places.ts';
import { type Random, randomFrom } from './random.ts';
import { WATER_BIRDS } from './water-birds.ts';
import { OBSERVERS } from './words.ts';

const SEED = 20_231_101;
const VISITS = 150;
const DAY = 86_400_000;
/** Midnight of the first day, and how many days the visits lie in: to the end of October 2026. */
const FIRST = epochOf('2023-11-01T00:00:00+00:00');
const DAYS = 1096;
/** Part of its stretch of days in which a visit may lie, so that no two fall on one day. */
const LOOSENESS = 0.8;

/** Every species of the model. */
export const DEMO_TAXA = [...WATER_BIRDS, ...LAND_BIRDS, ...OTHERS];

/**
 * 150 invented visits from 2023-11-01 to 2026-10-31 in the order of time, always the same for the same
 * taxa and seed. Species that `taxa` lacks are left out.
 */
export function demoVisits(taxa: readonly Taxon[], seed = SEED): Visit[] {
  const named = new Map<string | null, Taxon>();
  for (const taxon of taxa)
    if (!named.has(taxon.vernacularName)) named.set(taxon.vernacularName, taxon);
  const listed = DEMO_TAXA.flatMap((demo): Listed[] => {
    const taxon = named.get(demo.name);
    return taxon ? [{ demo, taxon }] : [];
  });
  const seeds = randomFrom(seed);
  return Array.from({ length: VISITS }, (_, place) => {
    const random = randomFrom(seeds.whole(0, 2 ** 32 - 1));
    const day = Math.floor(((place + LOOSENESS * random.next()) * DAYS) / VISITS);
    // Hours in UTC: in summer an hour earlier than the clock says, and so is the sun.
    const minute = random.whole(6 * 60, random.chance(0.8) ? 9 * 60 : 14 * 60);
    return outing(random, listed, {
      where: byShare(random, PLACES),
      observer: byShare(random, OBSERVERS),
      start: FIRST + day * DAY + minute * 60_000,
    });
  });
}

function byShare<Item extends { share: number }>(random: Random, items: readonly Item[]): Item {
  let left = random.next();
  const found = items.find(({ share }) => {
    left -= share;
    return left < 0;
  });
  return found ?? random.pick(items);
}
