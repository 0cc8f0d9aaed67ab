/** One line of the walk: an English name of the shipped list, and a count in the form it is typed. */
export interface Seen {
  name: string;
  count: string;
}

/** A winter hour at a lake and along its hedge. The place, the day and the numbers are invented. */
export const WALK: readonly Seen[] = [
  { name: 'Mallard', count: '24' },
  { name: 'Coot', count: '61' },
  { name: 'Tufted Duck', count: '12' },
  { name: 'Pochard', count: '7' },
  { name: 'Teal', count: '35' },
  { name: 'Wigeon', count: '~120' },
  { name: 'Gadwall', count: '8' },
  { name: 'Shoveler', count: '15' },
  { name: 'Goldeneye', count: '3' },
  { name: 'Great Crested Grebe', count: '5' },
  { name: 'Little Grebe', count: '2' },
  { name: 'Moorhen', count: '4' },
  { name: 'Mute Swan', count: '6' },
  { name: 'Greylag Goose', count: '40+' },
  { name: 'Cormorant', count: '9' },
  { name: 'Grey Heron', count: '1' },
  { name: 'Little Egret', count: '1' },
  { name: 'Black-headed Gull', count: '~200' },
  { name: 'Common Gull', count: '11' },
  { name: 'Lapwing', count: '50' },
  { name: 'Snipe', count: '2' },
  { name: 'Water Rail', count: '1' },
  { name: 'Kingfisher', count: '1' },
  { name: 'Marsh Harrier', count: '1' },
  { name: 'Robin', count: '3' },
  { name: 'Wren', count: '2' },
  { name: 'Blackbird', count: '4' },
  { name: 'Fieldfare', count: '30' },
  { name: 'Bullfinch', count: '2' },
  { name: 'Long-tailed Tit', count: '10' },
];
