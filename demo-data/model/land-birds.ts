import { readTable } from './presence.ts';

/** Birds of reed, meadow, wood and farm; see `readTable`. From general knowledge, from memory. */
export const LAND_BIRDS = readTable(`
Pheasant                 777875445677 F6 M4 T4 3 mf
Red-legged Partridge     222322222222 F3 4
Stock Dove               666666666666 T5 F5 3
Woodpigeon               999999999999 T9 F9 M6 R2 30
Collared Dove            777777777777 F8 3
Cuckoo                   000685100000 R7 T4 1
Swift                    000198720000 W7 F6 M5 30
Barn Owl                 444444444444 M4 F4 1
Little Owl               222222222222 F3 1
Tawny Owl                222222222222 T3 1
Short-eared Owl          211000000122 M2 1
Sparrowhawk              555555555555 T5 F4 M3 1 mf
Buzzard                  988888888899 T6 M6 F5 2
Red Kite                 223332222222 M3 F3 1
Green Woodpecker         444555555444 T5 M3 F3 1 mf
Great Spotted Woodpecker 888887777788 T9 F4 R2 2 mf
Lesser Spotted Woodpecker 011100000000 T1 1
Kestrel                  777776677777 M6 F5 1 mf
Merlin                   211000001112 M2 1
Hobby                    000486564100 R5 M4 W3 3
Peregrine                443333334444 M3 U4 1 aj
Jay                      665544458976 T8 F4 2
Magpie                   999988888999 F8 T6 M6 3
Jackdaw                  999999999999 F8 M6 T5 30
Rook                     888888888888 F7 M7 40
Raven                    555555555555 M4 T5 2
Carrion Crow             999999999999 M8 F8 T5 U4 W3 6
Blue Tit                 999998788999 T9 F8 R5 6 j
Great Tit                999998788999 T9 F7 R4 4 j
Coal Tit                 666655556666 T6 2
Marsh Tit                444433333444 T4 1
Bearded Tit              433444335765 R6 4 mf
Skylark                  568888744655 M7 F5 5
Sand Martin              004887752000 W7 15
Swallow                  003899998200 F7 M7 W6 12 j
House Martin             000688886100 F6 W5 10
Cetti's Warbler          889999778888 R9 W2 3
Long-tailed Tit          888766778888 T8 F5 R5 8
Willow Warbler           000765452000 T6 R5 2
Chiffchaff               338999878433 T9 R6 F5 4
Sedge Warbler            000798751000 R9 M3 6
Reed Warbler             000599984000 R9 W3 10
Grasshopper Warbler      000442100000 R4 1
Blackcap                 224999766222 T9 F6 R3 4 mf
Garden Warbler           000376421000 T5 R4 2
Lesser Whitethroat       000354232000 F5 1
Whitethroat              000698753000 F8 M6 3
Goldcrest                777655556887 T7 F3 3
Firecrest                211000001222 T2 1
Nuthatch                 777766667777 T7 2
Treecreeper              666655556666 T6 1
Wren                     999999888999 T9 R8 F8 M4 6
Starling                 998776666799 R6 F7 M6 150 j
Mistle Thrush            566555444444 T5 F4 M3 2
Song Thrush              789988645666 T8 F7 3
Redwing                  986100001899 T7 F7 M6 25
Blackbird                999999888999 T9 F9 R4 5 mf
Fieldfare                887200000688 F7 M7 T3 35
Ring Ouzel               000100000100 M1 1 mf
Robin                    999998679999 T9 F9 R4 6
Spotted Flycatcher       000044342000 T4 F2 2
Black Redstart           110000000111 F1 1
Redstart                 000310022000 T2 F2 1 mf
Whinchat                 000220033000 M4 1
Stonechat                554333334665 M5 R4 2 mf
Wheatear                 003520034100 M5 U3 2 mf
Dunnock                  889987656778 F8 T7 R4 3
House Sparrow            999999999999 F8 12 mf
Yellow Wagtail           000431243000 M4 3
Pied Wagtail             777666667777 F6 U5 M5 4
Tree Pipit               000210011000 T1 1
Meadow Pipit             877644347888 M7 12
Chaffinch                999988756889 T9 F8 8 mf
Brambling                222100000122 T3 3 mf
Bullfinch                666555445666 F6 T5 3 mf
Greenfinch               555555555555 F5 T3 4
Linnet                   445677666544 M5 F5 15
Redpoll                  443100000344 R3 T4 12
Crossbill                111001111111 T1 6
Goldfinch                888888889988 F8 M6 R3 T3 12
Siskin                   555200001455 T5 R3 15 mf
Yellowhammer             222333322222 F3 3
Reed Bunting             888999865677 R8 M5 4 mf
`);
