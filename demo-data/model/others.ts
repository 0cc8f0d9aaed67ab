import { readTable } from './presence.ts';

/** Who goes out for birds notes the rest less often; not from a source. */
const ATTENTION = { animals: 0.8, plants: 0.6 } as const;

/** Butterflies, dragonflies, mammals and the like; see `readTable`. From general knowledge, from memory. */
const ANIMALS = readTable(
  `
Brimstone                014652442100 T5 F5 2 mf
Large White              000243664100 F5 3
Small White              001443775100 F6 4
Green-veined White       000553663000 M6 F4 4
Orange-tip               001871000000 M5 F6 3 mf
Speckled Wood            002565687200 T8 4
Ringlet                  000006710000 T5 M5 6
Meadow Brown             000007972000 M8 15
Gatekeeper               000001870000 F8 8
Silver-washed Fritillary 000002530000 T4 3
Red Admiral              112235788521 F6 T4 2
Painted Lady             000123332100 F3 1
Peacock                  015531674100 F6 3
Small Tortoiseshell      014434533100 F5 2
Comma                    004423655200 T5 F4 1
Small Copper             000022344100 M4 1
Common Blue              000044363000 M5 5 mf
Holly Blue               000430451000 F4 1
Banded Demoiselle        000068740000 W4 R4 6 mf
Large Red Damselfly      000486200000 R5 4
Azure Damselfly          000188620000 R7 20
Common Blue Damselfly    000078863000 W7 30
Blue-tailed Damselfly    000078862000 W5 R6 8
Red-eyed Damselfly       000046520000 W4 4
Hairy Dragonfly          000275000000 R6 3
Four-spotted Chaser      000188610000 R7 10
Broad-bodied Chaser      000045300000 R3 1 mf
Emperor Dragonfly        000026851000 W6 2
Black-tailed Skimmer     000047840000 W6 8
Brown Hawker             000002674000 W5 2
Southern Hawker          000000366300 T4 1
Migrant Hawker           000000389500 R8 6
Common Darter            000001589720 W6 R6 10
Ruddy Darter             000001674000 R5 4
Common Carder Bee        001455787510 F5 3
Buff-tailed Bumblebee    124555554321 F5 3
Rabbit                   455666655444 F5 M3 4
Brown Hare               234433222222 M3 2
Grey Squirrel            777666667887 T8 2
Mole                     332222222333 M3 F3 1
Fox                      333333333333 M3 F3 1
Otter                    222222222222 W3 R2 1
Stoat                    222233332222 M2 F3 1
Roe Deer                 555555455555 M4 T4 2 mf
Common Frog              035432333200 R4 M3 2
Common Toad              004422222100 T3 R3 2
Grass Snake              002454322000 R4 1
`,
  ATTENTION.animals,
);

/** Plants in flower and fungi in fruit. From general knowledge, from memory. */
const PLANTS = readTable(
  `
Snowdrop                 584000000001 T5 F4 20
Lesser Celandine         158830000000 T7 F6 30
Primrose                 126830000000 T6 F4 10
Blackthorn               003810000000 F7 5
Marsh-marigold           003872000000 M5 R5 8
Cuckooflower             000686000000 M7 20
Bluebell                 000683000000 T8 50
Cow Parsley              000486100000 F8 30
Yellow Iris              000048500000 R7 10
Ragged-Robin             000047510000 M6 10
Meadowsweet              000004874000 M7 R4 20
Purple-loosestrife       000003787000 R7 W4 15
Hemp-agrimony            000000477200 R5 10
Water Mint               000000487300 R6 M3 10
Jelly Ear                665432223566 T5 F4 8
Velvet Shank             653000000256 T4 6
Turkeytail               444322223555 T6 10
Birch Polypore           333333333444 T4 3
King Alfred's Cakes      444333333444 T5 6
Candlesnuff Fungus       432100001455 T5 12
Fly Agaric               000000014730 T5 4
Honey Fungus             000000002651 T5 15
Sulphur Tuft             100100003664 T5 15
Scarlet Elfcup           565200000013 T4 4
`,
  ATTENTION.plants,
);

export const OTHERS = [...ANIMALS, ...PLANTS];
