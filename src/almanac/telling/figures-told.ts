import type { GroupOf } from '../asking/complete.ts';
import { yearOf } from '../asking/days.ts';
import type { VisitDigest } from '../asking/digest.ts';
import type { Query } from '../asking/query.ts';
import type { TaxonPage } from '../asking/taxon-page.ts';
import { abundancesOf } from '../figures/abundance.ts';
import { accumulationOf } from '../figures/accumulation.ts';
import { chao1, coverage, type Estimated } from '../figures/chao1.ts';
import { hill, pielou, richness, shannon, simpson } from '../figures/diversity.ts';
import { drawsFrom } from '../figures/draws.ts';
import { type Figure, many, NEEDS } from '../figures/figure.ts';
import { firstAndLast } from '../figures/first-and-last.ts';
import { rarefiedAlike } from '../figures/rarefaction.ts';
import { type Per, type Rate, rate } from '../figures/rate.ts';

const SEED = 1993;

/** A figure with what it is of, what it needs, and how it reads; `shown` is empty where it is refused. */
export interface FigureTold {
  /** A group or a taxon. */
  of: string;
  name: string;
  needs: string;
  shown: string[];
  figure: Figure<object>;
}

/**
 * The figures of the visits of an answer: of taxa that were asked for their rates and dates, else those
 * of each group, as individuals of birds and of flowers do not compare.
 */
export function figuresTold(
  visits: readonly VisitDigest[],
  query: Query,
  taxa: readonly TaxonPage[],
  groupOf: GroupOf,
): FigureTold[] {
  if (query.taxa.size > 0)
    return taxa.flatMap((page) => ofTaxon(page, visits, groupOf(page.taxon.list)));
  const groups = new Set(
    visits.flatMap(({ seen }) => seen.map(({ taxon }) => groupOf(taxon.list))),
  );
  return [...groups].sort().flatMap((group) => ofGroup(group, visits, groupOf));
}

function ofTaxon(
  { key, name }: TaxonPage,
  visits: readonly VisitDigest[],
  group: string,
): FigureTold[] {
  const rateBy = (per: Per) =>
    told(
      name,
      `rate ${per === 'hour' ? 'an' : 'a'} ${per}`,
      NEEDS.rate,
      rate(visits, { key, group }, per, drawsFrom(SEED)),
      (found) => [rateWords(found, per)],
    );
  return [
    rateBy('hour'),
    rateBy('kilometre'),
    told(name, 'dates by year', NEEDS.firstAndLast, firstAndLast(visits, key), ({ years }) =>
      years.map(({ year, first, last, visitsWith, visits: made, hours }) => {
        const dates = first === null ? 'none' : `${first.slice(5)} to ${last?.slice(5)}`;
        return `${year}: ${dates}, ${visitsWith} of ${many(made, 'visit')}, ${hours.toFixed(0)} h`;
      }),
    ),
  ];
}

function rateWords({ rate: found, interval, individuals, effort, visits }: Rate, per: Per): string {
  const unit = per === 'hour' ? 'h' : 'km';
  const [low, high] = interval;
  return `${found.toFixed(2)} (95 % ${low.toFixed(2)} to ${high.toFixed(2)}): ${individuals} in ${effort.toFixed(1)} ${unit} of ${many(visits, 'visit')}`;
}

function ofGroup(group: string, visits: readonly VisitDigest[], groupOf: GroupOf): FigureTold[] {
  const own = visits.map((visit) => ({
    ...visit,
    seen: visit.seen.filter(({ taxon }) => groupOf(taxon.list) === group),
  }));
  const abundances = abundancesOf(own);
  const years = [...new Set(own.map(({ date }) => yearOf(date)))].sort();
  const alike = rarefiedAlike(
    years.map((year) => abundancesOf(own.filter(({ date }) => yearOf(date) === year))),
  );
  return [
    told(group, 'richness', NEEDS.richness, richness(abundances), ({ species }) => [
      `${species} species`,
    ]),
    told(group, "Shannon's H'", NEEDS.shannon, shannon(abundances), ({ entropy }) => [
      `${entropy.toFixed(3)} nats`,
    ]),
    told(group, 'Simpson', NEEDS.simpson, simpson(abundances), ({ oneLess, inverse }) => [
      `1-D ${oneLess.toFixed(3)}, 1/D ${inverse.toFixed(2)}`,
    ]),
    told(group, "Pielou's J", NEEDS.pielou, pielou(abundances), ({ evenness }) => [
      evenness.toFixed(3),
    ]),
    told(group, 'Hill 0, 1, 2', NEEDS.hill, hill(abundances), ({ order0, order1, order2 }) => [
      `${order0}, ${order1.toFixed(2)}, ${order2.toFixed(2)}`,
    ]),
    told(group, 'Chao1', NEEDS.chao1, chao1(abundances), ({ biasCorrected, classic }) => [
      `${estimateWords(biasCorrected)}, bias-corrected`,
      ...(classic === null ? [] : [`${estimateWords(classic)}, classic`]),
    ]),
    told(group, 'coverage', NEEDS.coverage, coverage(abundances), ({ coverage: share }) => [
      share.toFixed(4),
    ]),
    told(
      group,
      'accumulation',
      NEEDS.accumulation,
      accumulationOf(own, group, groupOf),
      ({ steps }) =>
        [1, Math.ceil(steps.length / 2), steps.length].flatMap((number) => {
          const step = steps[number - 1];
          return step === undefined
            ? []
            : `${many(step.visits, 'visit')}: ${step.species.toFixed(1)} species, sd ${step.sd.toFixed(1)}`;
        }),
    ),
    told(
      group,
      'rarefied years',
      NEEDS.rarefaction,
      'refused' in alike ? alike : { ...alike, notes: [] },
      ({ samples, individuals }) =>
        samples.map((sample, at) =>
          'refused' in sample
            ? `${years[at]}: ${sample.refused}`
            : `${years[at]}: ${sample.species.toFixed(1)} species among ${individuals}, sd ${sample.sd.toFixed(1)}`,
        ),
    ),
  ];
}

function estimateWords({ species, interval }: Estimated): string {
  const within =
    interval === null ? '' : ` (95 % ${interval[0].toFixed(1)} to ${interval[1].toFixed(1)})`;
  return `${species.toFixed(1)}${within}`;
}

function told<Values extends object>(
  of: string,
  name: string,
  needs: string,
  figure: Figure<Values>,
  shown: (values: Values) => string[],
): FigureTold {
  return { of, name, needs, shown: 'refused' in figure ? [] : shown(figure), figure };
}
