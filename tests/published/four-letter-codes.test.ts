import { describe, expect, test } from 'vitest';
import { fourLetterCode } from '../../src/taxa/names.ts';
import { clearHit, search } from '../../src/taxa/search.ts';
import { indexTaxa } from '../../src/taxa/taxon-index.ts';
import { bird } from '../taxa/birds.ts';

// Klimkiewicz & Robbins 1978, Standard abbreviations for common names of birds, North American Bird
// Bander 3: 16-25; Pyle & DeSante 2003, Four-letter and six-letter alpha codes, North American Bird
// Bander 28: 64-79. North American names; the examples are those of the rules.
describe('the four-letter code of an English name', () => {
  test.each([
    ['one word gives its first four letters', 'Dunlin', 'DUNL'],
    ['one word gives its first four letters', 'Mallard', 'MALL'],
    ['two words give two letters each', 'American Wigeon', 'AMWI'],
    ['two words give two letters each', 'Mute Swan', 'MUSW'],
    ['three words give one, one and two', 'Red-tailed Hawk', 'RTHA'],
    ['three words give one, one and two', "Chuck-will's-widow", 'CWWI'],
    ['three words give one, one and two', 'Great Horned Owl', 'GHOW'],
    ['only the last two hyphenated give two, one and one', 'Eastern Screech-Owl', 'EASO'],
    ['only the last two hyphenated give two, one and one', 'Western Wood-Pewee', 'WEWP'],
    ['four words give one letter each', 'Black-crowned Night-Heron', 'BCNH'],
    ['four words give one letter each', 'Northern Saw-whet Owl', 'NSWO'],
    ['four words give one letter each', 'Great Black-backed Gull', 'GBBG'],
    ['four words give one letter each', 'Eastern Whip-poor-will', 'EWPW'],
  ])('%s: %s is %s', (_, name, code) => {
    expect(fourLetterCode(name)).toBe(code);
  });
});

// Pyle & DeSante 2003: these pairs come to one code by the rule and are set apart by a table. The plain
// rule is kept here, so that the code has to offer both and take neither.
describe('a code that two names come to', () => {
  test.each([
    ['BAOW', 'Barn Owl', 'Barred Owl'],
    ['BASW', 'Bank Swallow', 'Barn Swallow'],
    ['CAGO', 'Canada Goose', 'Cackling Goose'],
  ])('%s offers %s and %s, and takes neither by itself', (code, one, two) => {
    const taxa = [one, two, 'Mallard', 'Tufted Duck'].map((vernacularName) => ({
      ...bird('Mallard'),
      vernacularName,
      scientificName: `Aus ${vernacularName.toLowerCase()}`,
      otherEnglishNames: [],
      olderScientificNames: [],
    }));
    for (const typed of [code, code.toLowerCase()]) {
      const hits = search(indexTaxa(taxa), typed, (taxon) => (taxon === taxa[0] ? 20 : 0));
      expect(hits.map(({ taxon }) => taxon.vernacularName)).toEqual([one, two]);
      expect(clearHit(hits)).toBeNull();
    }
  });
});
