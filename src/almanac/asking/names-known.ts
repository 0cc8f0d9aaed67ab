import { plainWords } from '../../taxa/names.ts';
import { taxonName } from '../../visit/entry.ts';
import { placeKey } from '../../visit/place.ts';
import type { GroupOf } from './complete.ts';
import type { VisitDigest } from './digest.ts';

/** Something of the notebook that has a name. */
export interface Named {
  key: string;
  name: string;
}

interface Name extends Named {
  /** All its names, as plain words. */
  names: readonly (readonly string[])[];
}

/** What words can mean in this notebook. */
export interface NamesKnown {
  taxa: readonly Name[];
  places: readonly Name[];
  groups: readonly Name[];
  /** Every plain word of the descriptions and of the names that observers gave. */
  described: ReadonlySet<string>;
}

/** Names are gathered once for the same visits, not at every question. */
const gathered = new WeakMap<readonly VisitDigest[], { groupOf: GroupOf; names: NamesKnown }>();

/** The names that stand in visits. */
export function namesKnown(visits: readonly VisitDigest[], groupOf: GroupOf): NamesKnown {
  const before = gathered.get(visits);
  if (before?.groupOf === groupOf) return before.names;
  const names = gather(visits, groupOf);
  gathered.set(visits, { groupOf, names });
  return names;
}

function gather(visits: readonly VisitDigest[], groupOf: GroupOf): NamesKnown {
  const taxa = new Map<string, Name>();
  const places = new Map<string, Name>();
  const groups = new Map<string, Name>();
  const described = new Set<string>();
  for (const { place, entries, description: ofVisit } of visits) {
    for (const word of plainWords(ofVisit ?? '')) described.add(word);
    if (place !== null) places.set(place.key, { ...place, names: [plainWords(place.name)] });
    for (const { key, taxon, name, description } of entries) {
      for (const word of plainWords(`${description ?? ''} ${key === null ? name : ''}`))
        described.add(word);
      if (key === null || taxon === null || taxa.has(key)) continue;
      const names = [taxon.vernacularName ?? '', taxon.scientificName].map(plainWords);
      taxa.set(key, {
        key,
        name: taxonName(taxon),
        names: names.filter(({ length }) => length > 0),
      });
      const group = groupOf(taxon.list);
      groups.set(group, { key: group, name: group, names: [plainWords(group)] });
    }
  }
  return {
    taxa: [...taxa.values()],
    places: [...places.values()],
    groups: [...groups.values()],
    described,
  };
}

/** Those whose whole name the words are, in the singular or the plural. */
export function wholly(names: readonly Name[], words: readonly string[]): Named[] {
  const said = words.join(' ');
  return names.filter((each) =>
    each.names.some((name) => [name.join(' '), ...pluralsOf(name)].includes(said)),
  );
}

/** Those in whose name, in any order, each of the words starts a word; `terns` finds a tern. */
export function starting(names: readonly Name[], words: readonly string[]): Named[] {
  return names.filter((each) =>
    each.names.some((name) =>
      words.every((word) =>
        name.some((part) => part.startsWith(word) || pluralsOf([part]).includes(word)),
      ),
    ),
  );
}

/** The whole name of a place, with the case and the spacing as they were typed. */
export function placeWholly(places: readonly Name[], said: string): Named[] {
  return places.filter(({ key }) => key === placeKey(said));
}

/** A name in the plural, or for a group, whose name is one, in the singular. */
function pluralsOf(name: readonly string[]): string[] {
  const text = name.join(' ');
  if (text.endsWith('ies')) return [`${text.slice(0, -3)}y`];
  if (text.endsWith('s')) return [`${text}es`, text.slice(0, -1)];
  if (/(?:sh|ch|x)$/.test(text)) return [`${text}es`];
  return [`${text}s`, text.replace(/y$/, 'ies')];
}
