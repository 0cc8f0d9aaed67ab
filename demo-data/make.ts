/** Writes the invented notebook into a folder: `node demo-data/make.ts /tmp/notebook`. */
import { readdir, readFile } from 'node:fs/promises';
import { createDurably } from '../src/notebook/durable-file.ts';
import { visitText } from '../src/notebook/visit-file.ts';
import { visitPath } from '../src/notebook/visit-name.ts';
import { listName } from '../src/taxa/regions.ts';
import { readSpeciesList } from '../src/taxa/species-list.ts';
import { demoVisits } from './model/demo-visits.ts';

const REGION = 'britain-ireland';
const LISTS = new URL(`../taxa/${REGION}/`, import.meta.url);

const [notebook, ...more] = process.argv.slice(2);
if (notebook === undefined || more.length > 0) {
  console.error('Name one folder for the notebook: node demo-data/make.ts /tmp/notebook');
  process.exitCode = 2;
} else await make(notebook);

async function make(folder: string): Promise<void> {
  const files = (await readdir(LISTS)).filter((file) => file.endsWith('.csv')).sort();
  const lists = files.map(async (file) => {
    const group = file.replace(/\.csv$/, '').replaceAll('-', ' ');
    const identity = { name: listName(REGION, group), region: REGION, group };
    return readSpeciesList(identity, await readFile(new URL(file, LISTS), 'utf8')).taxa;
  });
  const visits = demoVisits((await Promise.all(lists)).flat());
  let written = 0;
  for (const visit of visits)
    if (await createDurably(visitPath(folder, visit), visitText(visit))) written += 1;
  const there = visits.length - written;
  const left = there === 0 ? '' : ` ${there} were there before and were left as they are.`;
  console.log(`Wrote ${written} invented visits into ${folder}.${left}`);
}
