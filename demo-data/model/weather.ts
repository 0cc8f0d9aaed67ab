import { readWeather, type Weather } from '../../src/visit/weather.ts';
import type { Random } from './random.ts';

/** Usual temperature of a morning in °C by month: invented, as mild wet lowland has it, from memory. */
const USUAL = [5, 5, 7, 10, 13, 16, 18, 18, 15, 12, 8, 6] as const;
const SPREAD = 3;
const FROM = ['sw', 'w', 'wsw', 'sw', 'w', 'nw', 's', 'se', 'e', 'ne', 'n'] as const;
const SKY = ['dry', 'dry', 'dry', 'drizzle', 'rain', 'showers', 'mist', 'light rain'] as const;

/** A reading at `time` as a walker types it, some with less in it; `month` from 1. */
export function weatherAt(random: Random, time: string, month: number): Weather {
  const degrees = Math.round((USUAL[month - 1] ?? 0) + SPREAD * random.bell());
  const parts = [
    `${degrees}c`,
    random.chance(0.9) ? `f${random.whole(0, 5)}` : '',
    random.chance(0.8) ? random.pick(FROM) : '',
    random.chance(0.8) ? `${random.whole(0, 8)}/8` : '',
    random.chance(0.6) ? random.pick(SKY) : '',
  ];
  const read = readWeather(parts.filter((part) => part !== '').join(' '));
  if ('problem' in read) throw new Error(read.problem);
  return { time, ...read.reading };
}
