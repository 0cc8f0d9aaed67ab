/** A moment (epoch milliseconds) as a file name that sorts by time: ISO 8601 basic format, in UTC. */
export function momentName(epochMilliseconds: number): string {
  return new Date(epochMilliseconds).toISOString().replace(/[-:]/g, '');
}

const NAME = /^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2}\.\d{3})Z$/;

/** The moment that a name of `momentName` says; null for another name. */
export function momentIn(name: string): number | null {
  const moment = Date.parse(name.replace(NAME, '$1-$2-$3T$4:$5:$6Z'));
  return NAME.test(name) && Number.isFinite(moment) ? moment : null;
}
