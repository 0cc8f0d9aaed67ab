/**
 * Writes what other programs may use: `node shared/generate.ts` after a change of the visit's schema
 * or of a vocabulary. A test finds the files stale.
 */
import { writeFileSync } from 'node:fs';
import * as z from 'zod';
import { CATEGORY_WORDS, isThreatened } from '../src/taxa/red-list.ts';
import { GROUP_SIZES, PART_LETTERS } from '../src/visit/count.ts';
import { RED_LIST_CATEGORIES } from '../src/visit/entry.ts';
import { Visit } from '../src/visit/visit.ts';
import { BEAUFORT, COMPASS, PRECIPITATION } from '../src/visit/weather.ts';

/** The generated files of this folder, by name. */
export function generated(): Record<string, string> {
  const schema = {
    title: 'A Tussock visit file',
    ...z.toJSONSchema(Visit, { io: 'input', reused: 'ref' }),
  };
  const vocabularies = {
    redListCategories: {
      source: 'IUCN Red List Categories and Criteria, version 3.1, second edition (2012)',
      values: RED_LIST_CATEGORIES.map((code) => ({
        code,
        words: CATEGORY_WORDS[code],
        threatened: isThreatened(code),
      })),
    },
    beaufort: {
      source: 'WMO-No. 8, code table 1100 (names, from memory)',
      values: BEAUFORT.map((name, force) => ({ force, name })),
    },
    compass: { source: 'common practice, no source', values: COMPASS },
    precipitation: { source: "the project's own words", values: PRECIPITATION },
    countParts: { source: 'terms of Darwin Core (TDWG)', values: PART_LETTERS },
    groupSizes: {
      source: "common practice of counting in blocks; the project's own steps",
      values: GROUP_SIZES,
    },
  };
  return {
    'visit.schema.json': `${JSON.stringify(schema, null, 2)}\n`,
    'vocabularies.json': `${JSON.stringify(vocabularies, null, 2)}\n`,
  };
}

if (import.meta.main)
  for (const [name, text] of Object.entries(generated()))
    writeFileSync(new URL(name, import.meta.url), text);
