import type { Taxon } from '../../src/taxa/taxon.ts';
import { goneOn, readEffort } from '../../src/visit/effort.ts';
import { dateOf, stamp } from '../../src/visit/time.ts';
import { newVisit, type Visit } from '../../src/visit/visit.ts';
import { type DemoPlace, ZONE } from './places.ts';
import { type DemoTaxon, presence } from './presence.ts';
import type { Random } from './random.ts';
import { countOf, type Told, toldOf, typedBy } from './typed.ts';
import { type Walker, walkerFrom } from './walker.ts';
import { weatherAt } from './weather.ts';
import { type Observer, REASONS, UNNAMED, VISIT_DESCRIPTIONS } from './words.ts';

/** A species of the model that the lists have. */
export interface Listed {
  demo: DemoTaxon;
  taxon: Taxon;
}

/** Fewest and most entries of a visit, counting unnamed and repeated ones. */
const ENTRIES = { least: 15, most: 45 } as const;
/** Room for what is logged beside the species drawn. */
const BESIDES = 5;

/** One invented visit, ended; `start` in epoch milliseconds. */
export function outing(
  random: Random,
  listed: readonly Listed[],
  given: { where: DemoPlace; observer: Observer; start: number },
): Visit {
  const { where, observer, start } = given;
  const time = stamp(start, ZONE);
  const month = Number(dateOf(time).slice(5, 7));
  const empty = newVisit({ id: random.uuid(), timeZone: ZONE, start: time, place: where.place });
  const walker = walkerFrom(empty, start, random);
  const noteWeather = () => {
    const readings = [...walker.visit().weather, weatherAt(random, walker.now(), month)];
    walker.does({ do: 'set', part: 'weather', value: readings });
  };
  walker.wait(1);
  noteWeather();
  const met = drawn(random, listed, where, dateOf(time));
  const rest = random.chance(0.35) ? random.whole(5, met.length - 5) : -1;
  met.forEach((each, place) => {
    walker.wait(0.5 + 5 * random.next());
    if (place === rest) pauses(random, walker);
    logs(random, walker, observer, each, month);
  });
  if (random.chance(0.4)) unnamed(random, walker, observer, listed, month);
  if (random.chance(0.25)) noteWeather();
  ends(random, walker, observer);
  return walker.visit();
}

/**
 * The species of one visit: drawn without return, each the likelier the higher the odds of its presence
 * (Efraimidis and Spirakis 2006, from memory); how many follows from the sum of the chances.
 */
function drawn(random: Random, listed: readonly Listed[], where: DemoPlace, date: string) {
  const chances = listed
    .map((each) => ({ each, chance: presence(each.demo, where.mix, date) }))
    .filter(({ chance }) => chance > 0);
  const sum = chances.reduce((total, { chance }) => total + chance, 0);
  const wanted = Math.round(sum * (0.55 + 0.4 * random.next()));
  const number = Math.min(ENTRIES.most - BESIDES, Math.max(ENTRIES.least, wanted));
  const kept = chances
    .map(({ each, chance }) => ({
      each,
      turn: (-Math.log(1 - random.next()) * (1 - chance)) / chance,
    }))
    .sort((one, two) => one.turn - two.turn)
    .slice(0, number);
  return kept
    .map(({ each }) => ({ each, at: random.next() }))
    .sort((one, two) => one.at - two.at)
    .map(({ each }) => each);
}

/** Logs a species, and mends what went wrong with it. */
function logs(
  random: Random,
  walker: Walker,
  observer: Observer,
  { demo, taxon }: Listed,
  month: number,
): void {
  const told = toldOf(random, demo, { month, singly: taxon.countedSingly });
  const typed = typedBy(observer, told);
  const number = walker.logs(typed, taxon);
  const { length } = walker.visit().entries;
  const draw = random.next();
  const amends = (mended: Told, reasons: readonly string[]) => {
    walker.wait(1);
    walker.amends(number, typedBy(observer, mended), taxon, random.pick(reasons));
  };
  if (told.uncertain) {
    if (random.chance(0.3)) amends({ ...told, uncertain: false }, REASONS.settled);
  } else if (draw < 0.02) {
    const count = countOf(random, demo, taxon.countedSingly);
    amends({ ...told, count, parts: '' }, REASONS.recounted);
  } else if (draw < 0.03 && length < ENTRIES.most - 2) {
    walker.does({ do: 'strike', number: walker.logs(typed, taxon) });
  } else if (draw < 0.04) {
    walker.does({ do: 'undo' });
    walker.does({ do: 'redo' });
  } else if (draw < 0.05 && length < ENTRIES.most - 2) {
    walker.does({ do: 'undo' });
    walker.logs(typed, taxon);
  }
}

function unnamed(
  random: Random,
  walker: Walker,
  observer: Observer,
  listed: readonly Listed[],
  month: number,
): void {
  const fitting = UNNAMED.filter(({ months: [first, last] }) =>
    first <= last ? month >= first && month <= last : month >= first || month <= last,
  );
  const { words, description, turnsOut } = random.pick(fitting);
  walker.wait(2);
  const number = walker.logs(`${words}: ${description}`, null);
  const found = listed.find(({ demo }) => demo.name === turnsOut);
  if (!found || !random.chance(0.3)) return;
  walker.wait(20);
  const count = { kind: 'exact', value: 1 } as const;
  const told = { name: turnsOut.toLowerCase(), count, parts: '', uncertain: false, description };
  walker.amends(number, typedBy(observer, told), found.taxon, random.pick(REASONS.named));
}

function pauses(random: Random, walker: Walker): void {
  const { effort } = walker.visit();
  const open = { ...effort, pauses: [...effort.pauses, { start: walker.now(), end: null }] };
  walker.does({ do: 'set', part: 'effort', value: open });
  walker.wait(random.whole(8, 30));
  walker.does({ do: 'set', part: 'effort', value: goneOn(open, walker.now()) });
}

function ends(random: Random, walker: Walker, { name, method }: Observer): void {
  const people = random.whole(1, 3);
  const distance = (random.whole(8, 60) / 10).toFixed(1);
  const read = readEffort(
    `${distance} km ${people} ${people === 1 ? 'person' : 'people'} ${method}`,
  );
  if ('problem' in read) throw new Error(read.problem);
  const complete = random.chance(0.8) ? random.chance(0.7) : null;
  const groups = complete === null ? null : ['birds'];
  const effort = { ...walker.visit().effort, ...read.effort, complete, groups };
  walker.wait(3);
  walker.does({ do: 'set', part: 'effort', value: effort });
  const more = random.chance(0.3) ? `; ${random.pick(VISIT_DESCRIPTIONS)}` : '';
  walker.does({ do: 'set', part: 'description', value: `Logged by ${name}${more}.` });
  walker.does({ do: 'set', part: 'end', value: walker.now() });
}
