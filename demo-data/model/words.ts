import type { Habitat } from './presence.ts';

/** Invented people: who logs, how they type, how they go. */
export interface Observer {
  name: string;
  /** Name before or behind the count, or the first letters of each word. */
  types: 'count first' | 'count behind' | 'short';
  method: string;
  share: number;
}

export const OBSERVERS: readonly Observer[] = [
  { name: 'Hazel Ormeby', types: 'count behind', method: 'on foot', share: 0.5 },
  { name: 'Tobias Fennick', types: 'count first', method: 'on foot, telescope', share: 0.3 },
  { name: 'Maud Lathering', types: 'short', method: 'by bicycle and on foot', share: 0.2 },
];

/** Descriptions that fit what is met in a habitat. */
export const DESCRIPTIONS: Readonly<Record<Habitat, readonly string[]>> = {
  W: ['asleep by the raft', 'far out', 'close in by the screen', 'moved off when the hide opened'],
  R: ['deep in the reeds', 'along the ditch', 'heard only', 'at the reed edge, in the open'],
  M: ['on the flooded field', 'by the gate', 'went over low', 'put up by the cattle'],
  T: ['in the old willows', 'high in the ash', 'heard only', 'on the dead alder'],
  F: ['in the hedge by the farm', 'along the drove', 'on the wires', 'by the barn'],
  U: ['on the mud below the sluice', 'feeding along the edge', 'flew in at low water', 'roosting'],
};

/** An entry without a name, in the observer's own words, and what it may turn out to be. */
export interface Unnamed {
  words: string;
  description: string;
  months: readonly [first: number, last: number];
  turnsOut: string;
}

export const UNNAMED: readonly Unnamed[] = [
  {
    words: 'small brown bird',
    description: 'streaked, low in the sedge',
    months: [1, 12],
    turnsOut: 'Dunnock',
  },
  {
    words: 'warbler in the reeds',
    description: 'long chattering song, never seen',
    months: [4, 8],
    turnsOut: 'Sedge Warbler',
  },
  {
    words: 'big gull far out',
    description: 'very dark back, pink legs',
    months: [1, 12],
    turnsOut: 'Great Black-backed Gull',
  },
  {
    words: 'brown duck asleep',
    description: 'head hidden, white belly',
    months: [9, 4],
    turnsOut: 'Gadwall',
  },
  {
    words: 'small falcon',
    description: 'fast and low over the field, gone behind the bank',
    months: [1, 12],
    turnsOut: 'Merlin',
  },
  {
    words: 'blue damselfly',
    description: 'over the ditch, not caught up with',
    months: [5, 9],
    turnsOut: 'Azure Damselfly',
  },
  {
    words: 'orange bracket',
    description: 'on a dead willow, velvety underneath',
    months: [10, 3],
    turnsOut: 'Velvet Shank',
  },
  {
    words: 'pink flower by the gate',
    description: 'ragged petals',
    months: [5, 7],
    turnsOut: 'Ragged-Robin',
  },
];

export const REASONS = {
  recounted: ['counted again from the hide', 'more came in', 'a typing slip in the count'],
  settled: ['seen well when it came out', 'it called', 'picture looked at'],
  named: ['named at home from the notes', 'shown to the others'],
} as const;

export const VISIT_DESCRIPTIONS = [
  'water high after rain',
  'reed being cut on the far side',
  'cattle on the meadow',
  'quiet, little moving',
  'path under water by the gate',
] as const;
