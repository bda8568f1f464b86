/** Words for the shapes of electrodes, their places, directions and terminals, each with its help. */
import { entry, type Word } from './word.ts';

export const shapeWords: readonly Word[] = [
  entry(
    'shape',
    'bar',
    'a rectangle: width along x and height along y before turning',
    'bar N 10 mm × 120 mm at (60, 80) mm negative',
  ),
  entry('shape', 'disc', 'a round plate', 'disc D diameter 20 mm at centre positive', ['disk']),
  entry(
    'shape',
    'ring',
    'a hollow disc: outer diameter and wall',
    'ring R diameter 50 mm, wall 4 mm, at centre floating',
  ),
  entry(
    'shape',
    'box',
    'a hollow rectangle: outer size and wall',
    'box B 60 mm × 40 mm, wall 4 mm, at centre floating',
  ),
  entry(
    'shape',
    'spike',
    'a triangle with its point',
    'spike S base 20 mm, length 40 mm, tip at (90, 80) mm pointing left positive',
  ),
  entry(
    'shape',
    'prong',
    'a rectangle standing out: width across, length along',
    'prong S 10 mm × 40 mm, on P pointing left',
  ),
  entry('shape', 'outline', 'any polygon by its corners', 'outline F (20, 20) (40, 20) (30, 60) mm floating'),
  entry(
    'shape',
    'strip',
    'a bent strip along its middle line',
    'strip G (20, 20) (20, 80) (60, 80) mm, width 5 mm positive',
  ),

  entry('option', 'wide', 'size along x before turning', '10 mm wide, 120 mm high'),
  entry('option', 'high', 'size along y before turning', '10 mm wide, 120 mm high', ['tall', 'long']),
  entry('option', 'diameter', 'across', 'diameter 50 mm', ['dia', 'diam']),
  entry('option', 'radius', 'from the middle to the rim', 'radius 25 mm'),
  entry('option', 'inside diameter', 'across the hollow', 'inside diameter 42 mm', [
    'inner diameter',
    'internal diameter',
  ]),
  entry('option', 'wall', 'thickness of the metal of a hollow shape', 'wall 4 mm', ['wall thickness']),
  entry('option', 'opening', 'a gap in a hollow shape', 'opening 10 mm facing left'),
  entry('option', 'facing', 'which way an opening looks', 'opening 10 mm facing up'),
  entry('option', 'base', 'width of a spike where it begins', 'base 20 mm'),
  entry('option', 'length', 'from the base to the point', 'length 40 mm'),
  entry('option', 'tip radius', 'roundness of the point', 'tip radius 1 mm'),
  entry('option', 'width', 'width of a strip', 'width 5 mm'),

  entry('place', 'at', 'where the centre is', 'at (60, 80) mm'),
  entry('place', 'centre', 'the middle of the paper', 'at centre', ['center', 'the centre', 'the center']),
  entry('place', 'centre of', 'the middle of an electrode', 'at centre of R', [
    'center of',
    'the centre of',
    'the center of',
  ]),
  entry('place', 'right of', 'edge to edge, centres level', '100 mm right of N', ['to the right of']),
  entry('place', 'left of', 'edge to edge, centres level', '100 mm left of P', ['to the left of']),
  entry('place', 'above', 'edge to edge, one over the other', '20 mm above N'),
  entry('place', 'below', 'edge to edge, one under the other', '20 mm below N'),
  entry(
    'place',
    'midway between',
    'half-way between the facing edges of two electrodes',
    'midway between N and P',
    ['half-way between', 'halfway between', 'mid-way between', 'between'],
  ),
  entry('place', 'and', 'joins the two electrodes of `midway between`', 'midway between N and P'),
  entry('place', 'turned', 'by an angle, anticlockwise', 'turned 30°', [
    'rotated',
    'turned by',
    'rotated by',
  ]),
  entry('place', 'tip at', 'where the outermost metal is', 'tip at (90, 80) mm'),
  entry('place', 'on', 'stands out from the side of an electrode', 'on P pointing left'),
  entry('place', 'pointing', 'which way a spike or prong stands', 'pointing left'),

  entry('direction', 'left', 'towards smaller x', 'pointing left'),
  entry('direction', 'right', 'towards larger x', 'pointing right'),
  entry('direction', 'up', 'towards larger y', 'pointing up'),
  entry('direction', 'down', 'towards smaller y', 'pointing down'),

  entry('terminal', 'positive', 'joined to the positive terminal of the supply', 'positive', ['pos', '+ve']),
  entry('terminal', 'negative', 'joined to the negative terminal of the supply', 'negative', [
    'neg',
    '−ve',
    '-ve',
  ]),
  entry('terminal', 'floating', 'joined to nothing', 'floating'),
  entry('terminal', 'held at', 'kept at a potential', 'held at 1 V'),
  entry('terminal', 'joined to', 'joined to another electrode by a lead', 'joined to P', ['connected to']),
];
