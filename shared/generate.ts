/**
 * Writes what other programs may use: `node shared/generate.ts` after a change of the visit's schema
 * or of a vocabulary. A test finds the files stale.
 */
import { writeFileSync } from 'node:fs';
import * as z from 'zod';
import { MOON_PHASES } from '../src/sky/moon.ts';
import { CATEGORY_WORDS, isThreatened } from '../src/taxa/red-list.ts';
import { GROUP_SIZES, PART_LETTERS } from '../src/visit/count.ts';
import { METHODS } from '../src/visit/effort.ts';
import { RED_LIST_CATEGORIES } from '../src/visit/entry.ts';
import { LENGTH, MASS, SPEED, TEMPERATURE } from '../src/visit/units.ts';
import { Visit } from '../src/visit/visit.ts';
import { COMPASS, PRECIPITATION } from '../src/visit/weather.ts';
import { VISIBILITY_FROM } from '../src/visit/weather-air.ts';
import { BEAUFORT } from '../src/visit/weather-wind.ts';

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
      source:
        'WMO-No. 8, code table 1100 (names and lowest speeds, from memory); land signs in our words',
      values: BEAUFORT.map((each, force) => ({ force, ...each })),
    },
    compass: { source: 'common practice, no source', values: COMPASS },
    precipitation: { source: "the project's own words", values: PRECIPITATION },
    visibility: {
      source: 'limits of the UK Met Office (from memory), in fewer words',
      values: Object.entries(VISIBILITY_FROM).map(([word, fromMetres]) => ({ word, fromMetres })),
    },
    oktas: {
      source: 'WMO-No. 306, code table 2700 (from memory)',
      values: { least: 0, most: 8, hidden: 9, anyCloudIsAtLeast: 1, anyGapIsAtMost: 7 },
    },
    moonPhases: { source: 'common practice, no source', values: MOON_PHASES },
    methods: {
      source: "common practice, no source; an observer's own words are allowed",
      values: METHODS,
    },
    countParts: { source: 'terms of Darwin Core (TDWG)', values: PART_LETTERS },
    groupSizes: {
      source: "common practice of counting in blocks; the project's own steps",
      values: GROUP_SIZES,
    },
  };
  const units = {
    source: 'NIST SP 811 (2008), Appendix B, exact (from memory)',
    length: { base: 'metre', values: LENGTH },
    mass: { base: 'gram', values: MASS },
    speed: { base: 'metre a second', values: SPEED },
    temperature: { base: 'degree Celsius', formula: '(value - zero) / size', values: TEMPERATURE },
  };
  return {
    'visit.schema.json': `${JSON.stringify(schema, null, 2)}\n`,
    'vocabularies.json': `${JSON.stringify(vocabularies, null, 2)}\n`,
    'units.json': `${JSON.stringify(units, null, 2)}\n`,
  };
}

if (import.meta.main)
  for (const [name, text] of Object.entries(generated()))
    writeFileSync(new URL(name, import.meta.url), text);
