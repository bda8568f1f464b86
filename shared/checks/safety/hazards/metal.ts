/** Hazards of the electrodes: cut edges, points, metal past the board, and the tools that cut metal and paper. */
import type { Outline, Point } from '../../../field/geometry/outline.ts';
import type { Setup } from '../../../setup/setup.ts';
import type { Span } from '../../../text/span.ts';
import { all, type Hazard, type Note, type Scene } from '../hazard.ts';
import { inSetups, inText } from './causes.ts';
import { counting, eyes } from './words.ts';

const sheetMetal =
  /\b(?:copper|brass|alumini?um|metal)[- ](?:sheets?|foils?|strips?|electrodes?|plates?|pieces)\b|\b(?:sheets?|foils?|strips?) of (?:copper|brass|metal|alumini?um)\b|\b(?:ring|disc|disk|bar|spike|plate)s? of (?:copper|brass|alumini?um|metal)\b/gu;

const pieces =
  /\b(?:copper|brass|foil|metals?|edges?|electrodes?|pieces|parts|rings?|dis[ck]s?|bars?|spikes?|strips?|plates?|shapes?|sheets?|burrs?|points?|tips?|corners?|it|them)\b/u;

const sharpEdges: Note = {
  name: 'the edges are sharp: hold the pieces where they do not cut',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(
      /\b(?:sharp\w*|cuts?|burrs?|jagged|scratch\w*|slice\w*|razor)\b/u,
      pieces,
      /\b(?:sharp\w*|careful\w*|care|hold|handle\w*|hands?|fingers?|skin|edges?|beware|mind|watch|can|will|may|injur\w*|carry|carried|gloves?|tab|end)\b/u,
    ),
    all(
      /\b(?:hold|handle|carry|lift|pick)\w*/u,
      pieces,
      /\b(?:edges?|tabs?|ends?|flat|carefully|care|middle|sides?|gently)\b/u,
    ),
  ],
  draft: 'Edges of cut metal are sharp: hold the pieces flat, by the end for the clip.',
};

const pieceWords =
  /\b(?:copper|electrodes?|pieces|parts|rings?|dis[ck]s?|bars?|spikes?|strips?|plates?|shapes?|metal|foil|points?|everything|equipment|kit|apparatus|it|them|items?)\b/u;

const counted: Note = {
  name: 'count the pieces out and in',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(counting, pieceWords),
    all(
      /\b(?:\d+|two|three|four|five|six|eight|both|all)\b[^.;\n]{0,30}\bout\b[^.;\n]{0,30}\b(?:back|in)\b/u,
      pieceWords,
    ),
  ],
  draft: 'Count the pieces of metal out and in.',
};

const deburred: Note = {
  name: 'deburr the edges before the pieces are issued',
  serves: 'preparation',
  severity: 'warning',
  said: [
    all(/\b(?:deburr\w*|de-burr\w*|burrs?|emery|abrasive)\b/u),
    all(
      /\b(?:smooth\w*|filed?|filing|rounded|blunt\w*|dull\w*|sand(?:ed|ing)?|rubbed down)\b/u,
      /\b(?:edges?|copper|metal|corners?|electrodes?|pieces|tips?|foil)\b/u,
    ),
  ],
  draft: 'Edges are deburred with fine abrasive before the pieces are issued.',
};

function hasNoPoint({ setups }: Scene): boolean {
  return setups.every((setup) => pointIn(setup) === null);
}

const copperEdges: Hazard = {
  code: 'copper-edges',
  about: 'cut sheet metal',
  why: 'Thin sheet cuts like paper does, only deeper, and burrs tear.',
  causes: (scene) => [
    ...inSetups(scene, (setup) => copperLine(scene, setup), 'The electrodes are cut from this sheet.'),
    ...inText(scene, sheetMetal),
  ],
  // Electrodes with a point ask for the same of themselves.
  notes: [sharpEdges, ...[counted, deburred].map((note) => ({ ...note, needed: hasNoPoint }))],
};

function copperLine({ sheet }: Scene, { block }: Setup): Span | undefined {
  return sheet.blocks[block]?.block.statements.find(({ kind }) => kind === 'copper')?.span;
}

const sharpPoints: Hazard = {
  code: 'sharp-points',
  about: 'electrodes with a point',
  why: 'Even a tip of 0.2 mm radius on thin sheet pierces skin.',
  causes: (scene) => inSetups(scene, pointIn, 'This electrode has a point.'),
  notes: [
    {
      name: 'the point pierces: carry it by the other end',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\b(?:points?|pointed|spikes?|tips?|prongs?|corners?|triangles?|it)\b/u,
          /\b(?:sharp\w*|pierc\w*|prick\w*|stab\w*|punctur\w*|jab\w*|injur\w*|eyes?|skin|fingers?|carry|carried|hold|held|handle\w*|careful\w*|care|away|down\w*)\b/u,
          /\b(?:spikes?|points?|pointed|tips?|sharp\w*|triang\w*)\b/u,
        ),
      ],
      draft:
        'The spike pierces skin even when its tip is rounded: carry it flat, by the other end, point away.',
    },
    { ...counted, name: 'count it out and in', draft: 'Count the spikes out and in.' },
    {
      name: 'deburr it and round its tip before it is issued',
      serves: 'preparation',
      severity: 'warning',
      said: [
        all(
          /\b(?:deburr\w*|de-burr\w*|round\w*|blunt\w*|dull\w*|smooth\w*|filed?|radius)\b/u,
          /\b(?:tips?|points?|spikes?|edges?|corners?|electrodes?|pieces|copper)\b/u,
        ),
      ],
      draft: 'Spikes are deburred and their tips rounded before they are issued.',
    },
  ],
};

/** Cosine of 60°: a corner sharper than that is a point. */
const acuteCosine = 0.5;

function pointIn({ electrodes }: Setup): Span | null {
  const all = electrodes.flatMap(({ pieces }) => pieces);
  return all.find(({ shape, geometry }) => shape.shape === 'spike' || hasPoint(geometry.outer))?.span ?? null;
}

/** A corner between straight edges that is convex and acute. */
function hasPoint({ edges }: Outline): boolean {
  const turn = Math.sign(doubleArea(edges.map(({ from }) => from)));
  return edges.some((edge, i) => {
    const before = edges[(i + edges.length - 1) % edges.length];
    const next = edges[(i + 1) % edges.length];
    if (before === undefined || next === undefined || edge.arc !== null || before.arc !== null) return false;
    const back = difference(before.from, edge.from);
    const ahead = difference(next.from, edge.from);
    const cross = ahead.x * back.y - ahead.y * back.x;
    const dot = ahead.x * back.x + ahead.y * back.y;
    const lengths = Math.sqrt((back.x * back.x + back.y * back.y) * (ahead.x * ahead.x + ahead.y * ahead.y));
    return cross * turn > 0 && dot > acuteCosine * lengths * (1 + 1e-9);
  });
}

const difference = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });

const doubleArea = (corners: readonly Point[]): number =>
  corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);

const metalOverhang: Hazard = {
  code: 'metal-overhang',
  about: 'metal past the edge of the paper',
  why: 'Metal that reaches past the edge of the board catches sleeves and hands.',
  causes: (scene) =>
    inSetups(
      scene,
      ({ paper, electrodes, findings }) =>
        paper === null || findings.some(({ code }) => code === 'mostly-off-paper' || code === 'off-paper')
          ? null
          : electrodes.find(
              ({ box }) =>
                box.x0 < -1e-6 ||
                box.y0 < -1e-6 ||
                box.x1 > paper.width_mm + 1e-6 ||
                box.y1 > paper.height_mm + 1e-6,
            )?.span,
      'This electrode reaches past the paper.',
    ),
  notes: [
    {
      name: 'keep metal within the edge of the board',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\b(?:boards?|bench|table)\b/u,
          /\b(?:edges?|past|over|beyond|overhang\w*|within|project\w*|stick\w*|jut\w*|inside)\b/u,
          /\b(?:electrodes?|metal|copper|tabs?|bars?|ends?|pieces|clips?|nothing|spikes?)\b/u,
        ),
      ],
      draft: 'No metal reaches past the edge of the board.',
    },
  ],
};

const cuttingTools: Hazard = {
  code: 'cutting-tools',
  about: 'cutting',
  why: 'Knives and snips slip; off-cuts of metal fly.',
  causes: (scene) => [
    ...inSetups(scene, ({ holes, slits }) => holes[0]?.span ?? slits[0]?.span, 'This is cut into the paper.'),
    ...inText(
      scene,
      /\b(?:craft |stanley |hobby |utility )?(?:knife|knives)\b|\bscalpels?\b|\brazor blades?\b|\b(?:tin )?snips\b|\b(?:metal|tin) shears\b|\bguillotines?\b|\bbox ?cutters?\b/gu,
    ),
  ],
  notes: [
    {
      name: 'cut beforehand by a technician, or on a mat by people trained for it',
      serves: 'preparation',
      severity: 'warning',
      said: [
        all(
          /\b(?:cut\w*|knife|knives|scalpels?|blades?|snips|shears|tools?|holes?|slits?)\b/u,
          /\b(?:technicians?|beforehand|in advance|before the lesson|prep(?:aration)? room|trained|teacher|mats?|ruler|straight-?edge|away from (?:you|your|fingers|the body)|gloves?|adults?|staff|goggles|eye protection|ready[- ]cut|pre-?cut|lab manager|careful\w*|fingers)\b/u,
        ),
      ],
      draft: 'What has to be cut is cut beforehand by a technician, on a mat, away from fingers.',
    },
    {
      name: 'protect the eyes when metal is cut',
      serves: 'preparation',
      severity: 'warning',
      said: [all(eyes, /\b(?:cut\w*|snip\w*|shears|metal|tools?|wear|worn|protect\w*|goggles)\b/u)],
      draft: 'Wear eye protection when metal is cut.',
      needed: (scene) =>
        inText(scene, /\b(?:tin )?snips\b|\b(?:metal|tin) shears\b|\bguillotines?\b/gu).length > 0,
    },
  ],
};

export const metalHazards: readonly Hazard[] = [copperEdges, sharpPoints, metalOverhang, cuttingTools];
