import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkedTogether } from '../../src/taxa/list-check.ts';
import { isThreatened } from '../../src/taxa/red-list.ts';
import { listName, REGIONS } from '../../src/taxa/regions.ts';
import { sensitivityOf } from '../../src/taxa/sensitivity.ts';
import { readSpeciesList, type SpeciesList } from '../../src/taxa/species-list.ts';
import { entryTaxon, type Taxon } from '../../src/taxa/taxon.ts';
import { EntryTaxon, taxonKey } from '../../src/visit/entry.ts';

const TAXA = new URL('../../taxa/', import.meta.url);

function shipped(region: string): SpeciesList[] {
  const folder = new URL(`${region}/`, TAXA);
  const files = readdirSync(folder).filter((file) => file.endsWith('.csv'));
  return files.sort().map((file) => {
    const group = file.replace('.csv', '').replaceAll('-', ' ');
    const identity = { name: listName(region, group), region, group };
    return readSpeciesList(identity, readFileSync(new URL(file, folder), 'utf8'));
  });
}

const LISTS = Object.keys(REGIONS).flatMap(shipped);
const NAMED = LISTS.map((list): [string, SpeciesList] => [list.name, list]);

/** Keys of the taxa of which something doesn't hold. */
function but(taxa: readonly Taxon[], holds: (taxon: Taxon) => boolean): string[] {
  return taxa.filter((taxon) => !holds(taxon)).map((taxon) => `${taxon.list}: ${taxonKey(taxon)}`);
}
function taxonIn(list: string, name: string): Taxon | undefined {
  return LISTS.find((each) => each.name === list)?.taxa.find((taxon) => taxonKey(taxon) === name);
}

const LOWER = ['species', 'subspecies', 'variety', 'form', 'speciesAggregate'];
const HIGHER = [
  'kingdom',
  'phylum',
  'subphylum',
  'class',
  'order',
  'suborder',
  'infraorder',
  'parvorder',
  'superfamily',
  'family',
  'subfamily',
  'tribe',
  'genus',
  'subgenus',
];

/**
 * Names by rank: uninominal above the species, binominal for it (ICZN articles 4 and 5, ICN articles 20 and
 * 23), trinominal below (ICZN article 5.2, ICN article 24); × for hybrids (ICN article H.3).
 */
const EPITHET = '\\p{Ll}+(?:-\\p{Ll}+)*';
const GENUS = '\\p{Lu}\\p{Ll}+';
const ONE = new RegExp(`^${GENUS}$`, 'u');
const TWO = new RegExp(`^${GENUS} (?:× )?${EPITHET}$`, 'u');
const THREE = new RegExp(`^${GENUS} ${EPITHET}(?: (?:subsp|var|f)\\.)? ${EPITHET}$`, 'u');

/** Endings: -idae and -inae (ICZN article 29.2), -oidea (the same), -aceae (ICN 18.1), -ales (ICN 16.3). */
function hasEnding({ taxonRank, kingdom, scientificName }: Taxon): boolean {
  const animals = kingdom === 'Animalia';
  if (taxonRank === 'family') return scientificName.endsWith(animals ? 'idae' : 'aceae');
  if (taxonRank === 'subfamily') return scientificName.endsWith(animals ? 'inae' : 'oideae');
  if (taxonRank === 'superfamily') return scientificName.endsWith('oidea');
  if (taxonRank === 'order' && !animals && kingdom !== 'Protozoa')
    return scientificName.endsWith('ales');
  return true;
}

describe.each(NAMED)('the list %s', (_, { taxa, problems, group }) => {
  test('is read without a problem, and each taxon as an entry can keep it', () => {
    expect(problems).toEqual([]);
    expect(but(taxa, (taxon) => EntryTaxon.safeParse(entryTaxon(taxon)).success)).toEqual([]);
  });

  test('says what a higher name leaves open, and of a species nothing but an aggregate or a cross of its races', () => {
    expect(but(taxa, ({ taxonRank }) => [...LOWER, ...HIGHER].includes(taxonRank))).toEqual([]);
    const consistent = ({ taxonRank, identificationQualifier: qualifier }: Taxon) => {
      if (taxonRank === 'speciesAggregate') return qualifier === 'agg.';
      if (HIGHER.includes(taxonRank)) return qualifier !== null && qualifier !== 'agg.';
      return qualifier === null || /^\p{Ll}+ ?[/×] ?\p{Ll}+/u.test(qualifier);
    };
    expect(but(taxa, consistent)).toEqual([]);
  });

  test('has names of the form of their rank', () => {
    const formed = ({ taxonRank, scientificName }: Taxon) => {
      if (HIGHER.includes(taxonRank)) return ONE.test(scientificName);
      const two = taxonRank === 'species' || taxonRank === 'speciesAggregate';
      return (two ? TWO : THREE).test(scientificName);
    };
    expect(but(taxa, formed)).toEqual([]);
    expect(but(taxa, hasEnding)).toEqual([]);
    const older =
      /^(?:× )?\p{Lu}\p{Ll}+(?: (?:(?:×|kl\.|subsp\.|var\.|f\.) )?[\p{Ll}-]+)*(?: agg\.| sect\. \p{Lu}\p{Ll}+)?$/u;
    expect(but(taxa, (taxon) => taxon.olderScientificNames.every((n) => older.test(n)))).toEqual(
      [],
    );
  });

  test('gives a source for each category, and a category to species only', () => {
    expect(
      but(taxa, ({ redListCategory, redListSource }) =>
        redListCategory === 'NE' ? redListSource === null : (redListSource ?? '').includes('IUCN'),
      ),
    ).toEqual([]);
    const higher = taxa.filter(({ taxonRank }) => HIGHER.includes(taxonRank));
    expect(but(higher, ({ redListCategory }) => redListCategory === 'NE')).toEqual([]);
  });

  test('has an English name for each taxon, each once, fit for any terminal', () => {
    const names = taxa.map(({ vernacularName }) => vernacularName?.toLowerCase() ?? '');
    expect(names.filter((name) => name === '')).toEqual([]);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
    const plain = /^[\p{L}\p{M}\d' .,()/×&-]+$/u;
    const all = (taxon: Taxon) => [taxon.vernacularName ?? '', ...taxon.otherEnglishNames];
    expect(but(taxa, (taxon) => all(taxon).every((name) => plain.test(name)))).toEqual([]);
    expect(but(taxa, (taxon) => new Set(all(taxon)).size === all(taxon).length)).toEqual([]);
  });

  test('says of each taxon how often it is met and whether it is from there', () => {
    // Darwin Core's controlled vocabulary for establishmentMeans (TDWG 2021).
    const means = [
      'native',
      'nativeReintroduced',
      'nativeEndemic',
      'introduced',
      'vagrant',
      'uncertain',
    ];
    expect(but(taxa, ({ frequency }) => [1, 2, 3, 4].includes(frequency ?? 0))).toEqual([]);
    expect(
      but(
        taxa,
        ({ establishmentMeans }) =>
          establishmentMeans === null || means.includes(establishmentMeans),
      ),
    ).toEqual([]);
    expect(but(taxa, ({ kingdom }) => kingdom !== '')).toEqual([]);
  });

  test('counts animals one by one and notes only that plants and fungi are there', () => {
    if (group === 'seashore') return;
    const animals = ({ kingdom }: Taxon) => kingdom === 'Animalia';
    expect(but(taxa, (taxon) => taxon.countedSingly === animals(taxon))).toEqual([]);
  });
});

describe('the lists of a region', () => {
  test('have no taxon twice', () => {
    expect(checkedTogether(LISTS)).toEqual([]);
  });

  test.each([
    ['britain-ireland-birds', 300],
    ['britain-ireland-mammals', 60],
    ['britain-ireland-reptiles-and-amphibians', 13],
    ['britain-ireland-butterflies', 55],
    ['britain-ireland-dragonflies', 45],
    ['britain-ireland-bumblebees', 20],
    ['britain-ireland-trees-and-shrubs', 80],
    ['britain-ireland-wild-flowers', 250],
    ['britain-ireland-fungi', 60],
    ['britain-ireland-seashore', 60],
    ['north-america-birds', 450],
    ['north-america-mammals', 120],
    ['north-america-reptiles-and-amphibians', 150],
    ['north-america-butterflies', 120],
    ['north-america-dragonflies', 60],
    ['north-america-trees-and-shrubs', 120],
    ['north-america-wild-flowers', 250],
    ['north-america-fungi', 50],
    ['north-america-seashore', 60],
  ])('%s has at least %i species', (name, least) => {
    const list = LISTS.find((each) => each.name === name);
    const species = list?.taxa.filter(
      (taxon) => taxon.taxonRank === 'species' && taxon.identificationQualifier === null,
    );
    expect(species?.length).toBeGreaterThanOrEqual(least);
  });

  test('are all there is', () => {
    expect(LISTS).toHaveLength(19);
  });

  // IUCN Red List as carried by AviList v2025 (birds) and the Mammal Diversity Database 2.1 (mammals), and
  // where so marked in the row from memory of the Red List itself.
  test.each([
    ['britain-ireland-birds', 'Aythya ferina', 'Pochard', 'VU'],
    ['britain-ireland-birds', 'Puffinus yelkouan mauretanicus', 'Balearic Shearwater', 'CR'],
    ['britain-ireland-birds', 'Streptopelia turtur', 'Turtle Dove', 'VU'],
    ['britain-ireland-birds', 'Fratercula arctica', 'Puffin', 'VU'],
    ['britain-ireland-birds', 'Rissa tridactyla', 'Kittiwake', 'VU'],
    ['britain-ireland-birds', 'Numenius arquata', 'Curlew', 'NT'],
    ['britain-ireland-birds', 'Clangula hyemalis', 'Long-tailed Duck', 'VU'],
    ['britain-ireland-birds', 'Anas platyrhynchos', 'Mallard', 'LC'],
    ['britain-ireland-mammals', 'Oryctolagus cuniculus', 'Rabbit', 'EN'],
    ['britain-ireland-mammals', 'Balaenoptera physalus', 'Fin Whale', 'VU'],
    ['britain-ireland-mammals', 'Balaenoptera musculus', 'Blue Whale', 'EN'],
    ['britain-ireland-trees-and-shrubs', 'Fraxinus excelsior', 'Ash', 'NT'],
    ['north-america-birds', 'Gymnogyps californianus', 'California Condor', 'CR'],
    ['north-america-birds', 'Grus americana', 'Whooping Crane', 'EN'],
    ['north-america-birds', 'Charadrius melodus', 'Piping Plover', 'NT'],
    ['north-america-birds', 'Bubo scandiacus', 'Snowy Owl', 'VU'],
  ])('%s: %s, %s, is %s', (list, name, english, category) => {
    expect(taxonIn(list, name)).toMatchObject({
      vernacularName: english,
      redListCategory: category,
    });
  });

  test('hide the places of threatened species, save those that people brought', () => {
    const threatened = LISTS.flatMap(({ taxa }) => taxa).filter(
      (taxon) => isThreatened(taxon.redListCategory) && taxon.establishmentMeans !== 'introduced',
    );
    expect(threatened.length).toBeGreaterThan(50);
    expect(
      but(threatened, (taxon) =>
        ['medium', 'high', 'extreme'].includes(sensitivityOf(taxon) ?? ''),
      ),
    ).toEqual([]);
  });

  // Common practice, no source.
  test('hide a pair where both of its species are hidden', () => {
    const strengths = [null, 'low', 'medium', 'high', 'extreme'];
    const strength = (taxon: Taxon) => strengths.indexOf(taxon.sensitivity);
    const pairs = LISTS.flatMap(({ taxa }) => taxa).flatMap((taxon) => {
      const epithets = taxon.identificationQualifier?.split('/') ?? [];
      const parts = epithets.map((epithet) =>
        taxonIn(taxon.list, `${taxon.scientificName} ${epithet}`),
      );
      const whole = parts.filter((part) => part !== undefined);
      return whole.length > 1 && whole.length === parts.length ? [{ taxon, parts: whole }] : [];
    });
    expect(pairs.length).toBeGreaterThan(200);
    const bare = pairs.filter(
      ({ taxon, parts }) => strength(taxon) < Math.min(...parts.map(strength)),
    );
    expect(bare.map(({ taxon }) => taxonKey(taxon))).toEqual([]);
  });
});
