import { readTable } from './presence.ts';

/** Wildfowl, herons, rails, waders, gulls and terns; see `readTable`. From general knowledge, from memory. */
export const WATER_BIRDS = readTable(`
Mute Swan                999999999999 W9 M4 R4 4 j
Whooper Swan             321000000123 M3 W3 12 j
Canada Goose             666777666666 W6 M5 20
Greylag Goose            777777777777 W6 M6 30 j
Egyptian Goose           111111111111 W3 2
Shelduck                 577876543455 U8 W4 6 mf
Wigeon                   998400014899 W9 M6 120 mf
Gadwall                  998876667899 W9 R4 14 mf
Teal                     998511258999 W8 U7 M4 60 mf
Mallard                  999999999999 W9 R5 M5 25 mfj
Pintail                  664100002456 W6 M3 10 mf
Garganey                 002431121000 W4 2 mf
Shoveler                 998742246899 W9 18 mf
Pochard                  997321123589 W8 25 mf
Tufted Duck              999987778999 W9 30 mfj
Goldeneye                443100000134 W4 3 mf
Smew                     110000000001 W1 1 mf
Goosander                332100000123 W3 3 mf
Little Grebe             777777788877 W7 R5 3 j
Great Crested Grebe      777888888777 W8 4 j
Cormorant                999877788999 W8 U4 6 j
Bittern                  445665322334 R5 1
Little Egret             777777788877 W4 M4 U5 R3 3
Great White Egret        666655566777 W4 R5 M3 2
Cattle Egret             444333345554 M5 8
Grey Heron               999999999999 W6 R6 M5 2 j
Glossy Ibis              111111111111 M1 1
Spoonbill                000111111000 U2 1
Crane                    222333222222 M3 2
Water Rail               887765556788 R8 1
Moorhen                  999999999999 W7 R7 M4 3 j
Coot                     999999999999 W9 R3 40 j
Oystercatcher            222344433222 U5 2
Avocet                   233455432222 U4 8 j
Golden Plover            554100001245 M5 80
Ringed Plover            112342254211 U4 4
Little Ringed Plover     002554420000 U5 2 j
Lapwing                  999887788999 M8 U7 W3 90 j
Whimbrel                 000550221000 M3 U3 4
Curlew                   666422555666 M5 U5 5
Black-tailed Godwit      555632466555 U7 W3 20
Bar-tailed Godwit        000120012000 U2 3
Jack Snipe               222100000222 M3 1
Woodcock                 332000000023 T3 1
Snipe                    887410136788 M7 R4 U4 5
Common Sandpiper         000441563000 U6 W3 2
Green Sandpiper          222302575322 U6 M2 2
Wood Sandpiper           000020121000 U3 1
Redshank                 445654444444 U6 M4 3
Spotted Redshank         000100022100 U2 1
Greenshank               000320365100 U5 2
Turnstone                000120111000 U2 2
Ruff                     222200244222 U4 3 mf
Curlew Sandpiper         000000013100 U3 2 j
Sanderling               000020010000 U2 2
Dunlin                   333431455333 U6 12 aj
Little Stint             000000013100 U2 2 j
Black-headed Gull        999877889999 W7 M5 U7 80 aj
Mediterranean Gull       112232221111 W2 U2 2 aj
Little Gull              000220011000 W2 2 aj
Common Gull              776310134677 M5 W4 15
Herring Gull             887777778888 W5 U6 M4 12 aj
Lesser Black-backed Gull 567776666555 W5 U5 M5 8 aj
Great Black-backed Gull  444333334444 U4 W3 2
Yellow-legged Gull       000000122100 U2 1
Black Tern               000120012000 W2 2
Common Tern              000365541000 W5 4 aj
Osprey                   001200022000 W2 1
Marsh Harrier            777889987777 R8 M4 2 mfj
Hen Harrier              221000000122 R2 M2 1 mf
Kingfisher               655555567766 W6 R4 1 mf
Grey Wagtail             544433345555 W4 U3 1
Water Pipit              222100000122 U2 M2 1
`);
