// How each reading is taken and what each choice does, in a sentence or two beside its field.

export const helpWords = {
  height:
    'Stand the vessel on a flat table. Hold a square or a ruler upright beside it and read straight up, not along the leaning wall.',
  along:
    'Or lay the tape on the wall itself and read from the foot corner up. Leave this empty if you read the height.',
  across:
    'Across the outside, through the middle, with a caliper or between two upright blocks. Turn it a quarter and read again: the wider and the narrower tell how round it is.',
  girth:
    'Wrap a thin tape or a strip of paper once around, level, and mark where it meets itself. Half a millimetre here is half a millimetre at the seam.',
  footRound:
    'The radius of the rounded edge. Hold coins or drill shanks into the curve until one fits; half its width is the radius. Readings are of the sharp corner, as if the wall went on.',
  lipRound: 'The radius of the rolled or rounded rim. Leave it empty for a sharp edge.',
  handle:
    'How wide the handle is where it meets the wall, along the girth. The piece will stop short of it on both sides.',
  keepOff: 'Bare wall to leave on either side of the handle, so that a finger and a blade get in.',
  reading:
    'How well you can repeat one reading. Take the same girth three times: about half the difference between the largest and the smallest.',
  tape: 'A girth is read at the outside of the tape. Type how thick it is and it is taken off again.',
  fitMiss:
    'Hold the paper level at the foot and wrap it. What is left open between its two ends is a gap, 2; what goes past is an overlap, -2. Read it at both ends.',
  fitClimb:
    'Where the level edge does not meet itself: how much higher its end is than its beginning. Lower is with a minus.',
  keepOut: 'From where to where, measured along the wall from the foot corner.',
  lipZone:
    'How far below the rim lips touch. Decoration that reaches into it is told, with the caution for it.',
  wallKind:
    'Lay a ruler up the wall. If it touches all the way, it is straight. If it is made of straight stretches, it is stepped. If it rocks everywhere, it is smooth.',
  use: 'A vessel that lips touch has a zone below the rim that is best left bare.',
  artwork:
    'An SVG of one tile of the pattern, with a real size. Filled areas are cut; each colour is a layer of its own.',
  repeat: 'Across and up: the size of one repeat, as it is drawn. Left empty, it is the whole drawing.',
  drop: 'How far the next column is moved up: half the height for a half-drop.',
  shift: 'How far the next row is moved around: half the width for a brick pattern.',
  lay: 'On a taper something has to give. Even keeps the rows equally far apart and lets motifs widen with the girth; true angles keeps every shape and lets it grow; motifs whole moves each one as drawn, and only the room between them changes.',
  around: 'How many repeats go around. Left empty, it is the number that changes the drawn size least.',
  ways: 'Each way closes around the vessel without a gap. They are listed best first; the figures say what it costs.',
  coat: 'What lies under the film makes the girth grow: two pi times its thickness. Say how thick, or how many ml you pour.',
  film: 'How thick the film is with its glue, without its backing. Its own sheet says.',
  stretch:
    'The share by which the film may be stretched: 0.02 is two in a hundred. Straight walls need none.',
  band: 'From where to where the finished piece goes, measured along the wall from the foot corner. Left empty, all that lies flat.',
  seam: 'An overlap sticks on itself, and forgives a millimetre. A butt seam meets edge to edge. Cut through: lay both ends over each other, cut both at once along the line, and lift the two offcuts. A strip hides where two ends meet.',
  seamTop:
    'Which end of the overlap you lay last, and so see. The start on top: leave its edge loose, tuck the finish under it, then press it down.',
  measured:
    'Cut or print the test piece, measure its two scales of 150 mm with a good rule, and type what they came out as. The files are corrected by it from then on.',
  testStrip:
    'Draw two marks so far apart on a strip of the film, lay it around the vessel with your own pull, and measure from mark to mark along it. Wraps are cut shorter or longer around by that from then on. Leave it empty for film that keeps its length.',
  strip: 'How wide the strip is that goes over the seam. Half of it lies on either side.',
  hold: 'The least film that has to stick, of the overlap or on either side under the strip. Cutting and laying take their share first, and what is left is told.',
  turn: 'Where around the middle lies: 0 at the seam, 0.25 a quarter on, 0.5 opposite, counted as you turn the vessel counter-clockwise, seen from above. Or drag it on the drawing.',
  placeAlong: 'How far up the wall its middle lies, measured on the wall from the foot corner.',
  itemAcross: 'How wide it is on the vessel. Up follows from the drawing, unless you give it.',
  motifLay: 'On a taper a straight motif seems to sag. Bent along the level, it stands as the pattern does.',
  clear: 'How far around it the pattern is taken away. Left empty, it lies on the pattern.',
  capHeight:
    'The height of a capital H once it is on the vessel. Small letters are lower: about seven tenths of it.',
  fit: 'No line may be wider than this: letters get smaller until it fits. With nothing for the capitals, the widest line fills it.',
  spacing: 'Added between letters. A little more than the font has makes small letters easier to weed.',
  lineStep: 'From one line’s foot to the next one’s.',
  backing: 'How far the layer under the letters goes past them. It holds small letters together.',
  artAcross: 'How wide the whole drawing is, where its file does not say, or says it wrongly.',
  colours: 'In how many colours a picture of dots is traced. Each is a layer of its own.',
  ground:
    'Bought patterns often stand on a colour that fills the drawing. Where the vessel itself, or a coat, is to show there, leave that colour out.',
  layers:
    'Stacked keeps the lower film whole under the upper one: easy to lay, thicker. Knocked out leaves it flat, and both edges must meet.',
  spread:
    'How far the lower film goes on under the edge of the upper one, so that no bare line shows where they miss by a little. A minus leaves a gap.',
  under:
    'A film under all the others: back from their edges so that it does not show, or past them as a rim.',
  mend: 'Widens what is too thin, drops specks, closes hairline gaps and rounds sharp points, as far as the film asks; what is moved is shown over the drawing.',
  gores:
    'More gores are narrower, and each asks less stretch of the film. Left empty: as few as the film allows.',
  panels:
    'A piece that the sheet cannot hold is cut in panels that overlap. Joints fall where they cross the least of the pattern, between repeats, or where you say.',
  levels:
    'Heights along the wall, from the foot corner, at which the band is cut in levels, one above the other. Several are parted by commas: 40, 80.',
  shown:
    'A vessel that stands on its lip for show, such as a cloche. Artwork and lettering are laid on their heads, so that they read right there. Readings stay from the foot corner up.',
  pieceSpacing: 'Kept free between two pieces, so that the blade turns in waste.',
  batch: 'How many vessels are made alike. All their pieces are laid out on the sheets together.',
  thinnest:
    'Film thinner than this tears when it is weeded or laid, and a narrower gap closes. Cut a comb of strips from 0.5 to 2 mm and see which survive. What the pattern has below it is marked.',
  smallest: 'Pieces smaller than this are lost from the carrier.',
  gather: 'The share by which film can be pressed together without a pucker: 0.01 is one in a hundred.',
  grain: 'The way its grain runs on the sheet. Pieces are then all laid along it.',
  relief:
    'Large waste is heavy to lift and pulls at what stays. Straight cuts up the wall part it into strips about so wide.',
  reliefClear: 'No cut comes nearer than this to film that stays.',
  stencil:
    'What an opening would let fall out, such as the middle of an O, is tied by two bridges, so that the mask holds together and can be used again.',
  mask: 'Film that keeps colour off: its edge follows the motifs that are laid, around the vessel, and it covers the rest of the wall. Spray it, and pull it before the coat is hard.',
  standOff: 'How far the edge of the mask stays away from the motifs, nowhere nearer.',
  maskSmooth:
    'Where the edge stands up between two motifs it is rounded to this radius. At 0 it follows into every hollow.',
  maskWindow:
    'The negative of the mask: openings to spray through behind the motifs. Past their edge, or with a minus within it, so that no spray shows beside them.',
  collar:
    'A paper strip, cut as an arc: wrapped around and taped to its own tab it lies level, where a straight strip climbs. Lay the film along its edge.',
  collarLine: 'How high the level line is, measured along the wall from the foot corner.',
  collarTab: 'How far the strip goes on past the seam, to be taped on its own beginning.',
  collarPaper:
    'A strip goes around outside of its own thickness. Ten sheets measured together and divided by ten tell it.',
  overlap: 'How far the end goes on past the seam, to stick on its own beginning. 4 to 10 mm is usual.',
  trim: 'Extra film past the finished edge, cut away level once it is laid. 3 mm is easy to hold.',
  seamAt:
    'Where along the pattern the seam falls. At its edge a motif that was drawn over the edge is cut; a straight seam cuts least where it goes through gaps.',
  edges:
    'Straight cuts the pattern where the band ends. Whole rows fits the rows so that none is cut. Fade leaves out every motif that an edge would cut.',
  together:
    'What touches is one motif. Pieces that stand apart, such as the dots of an eye, count as one where they are no further apart than this.',
  pieces: 'On a wall that bends more than the film gives, the band can be cut in stacked pieces.',
  sheet:
    'The size of the sheet you cut from, and the edge the cutter cannot reach. A piece that does not fit is told.',
} as const satisfies Readonly<Record<string, string>>;

export type HelpKey = keyof typeof helpWords;
