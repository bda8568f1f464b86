/** Hazards of the bench: cut metal, points, probes, pins, leads, paper. */
import type { Outline, Point } from '../../../field/geometry/outline.ts';
import type { Setup } from '../../../setup/setup.ts';
import type { Span } from '../../../text/span.ts';
import { all, type Cause, type Hazard, type Note, type Scene } from '../hazard.ts';
import { inSetups, inText } from './causes.ts';
import { counting, eyes, handwashing } from './words.ts';

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

const counted: Note = {
  name: 'count the pieces out and in',
  serves: 'bench',
  severity: 'warning',
  said: [
    all(
      counting,
      /\b(?:copper|electrodes?|pieces|parts|rings?|dis[ck]s?|bars?|spikes?|strips?|plates?|shapes?|metal|foil|points?|everything|equipment|kit|apparatus|it|them|items?)\b/u,
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

const copperEdges: Hazard = {
  code: 'copper-edges',
  about: 'cut sheet metal',
  why: 'Thin sheet cuts like paper does, only deeper, and burrs tear.',
  causes: (scene) => [
    ...inSetups(scene, (setup) => copperLine(scene, setup), 'The electrodes are cut from this sheet.'),
    ...inText(scene, sheetMetal),
  ],
  notes: [sharpEdges, counted, deburred],
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
      ({ paper, electrodes }) =>
        paper === null
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

const probePoint: Hazard = {
  code: 'probe-point',
  about: 'fine probes',
  why: 'A fine probe is a needle: it goes into eyes and fingers when somebody is jostled.',
  causes: (scene) => {
    const told = inText(
      scene,
      /\b(?:pointed|sharp|fine|needle|fine-tipped)[- ](?:probes?|tips?|points?)\b|\bprobes? with (?:an? )?(?:fine|sharp|needle) (?:point|tip)\b|\bneedle probes?\b/gu,
    );
    const fine = inSetups(
      scene,
      ({ meter }) => (meter !== null && meter.tip_mm < bluntFrom_mm ? meter.span : null),
      'The tip of the probe stands here.',
    );
    return told.length > 0 || plugProbe(scene).length === 0 ? [...fine, ...told] : [];
  },
  notes: [
    {
      name: 'keep it away from eyes and skin',
      serves: 'bench',
      severity: 'warning',
      said: [
        all(
          /\bprobes?\b|\bneedles?\b|\bpoints?\b|\btips?\b/u,
          /\b(?:eyes?|faces?|skin|goggles|spectacles)\b|\beye[- ]/u,
        ),
      ],
      draft: 'Keep the point of the probe away from eyes and skin.',
    },
    {
      name: 'cap it or count it',
      serves: 'bench',
      severity: 'note',
      said: [
        all(/\bprobes?\b|\bneedles?\b/u, counting),
        all(
          /\bprobes?\b|\bneedles?\b/u,
          /\b(?:caps?|capped|covers?|covered|corks?|sheaths?|sleeves?|shroud\w*|stoppers?)\b/u,
        ),
      ],
      draft: 'Put the cap on the probe when it is not in use; probes are counted out and in.',
    },
  ],
};

/** A contact this wide does not pierce, mm. */
const bluntFrom_mm = 2;

const plugProbe = (scene: Scene): readonly Cause[] =>
  inText(
    scene,
    /\b(?:bare )?(?:4 mm |banana |wander )(?:plugs?|leads?)\b[^.;\n]{0,40}\b(?:as|for) (?:a |the )?probes?\b|\bbare (?:4 mm |banana )?(?:plugs?|leads?)\b|\b(?:plug|lead) (?:end )?(?:is|as) (?:a |the )?probe\b/gu,
  );

const probePlug: Hazard = {
  code: 'probe-plug',
  about: 'bare plugs',
  why: 'A bare 4 mm plug fits into a mains socket.',
  causes: plugProbe,
  notes: [
    {
      name: 'one counted bare lead for each set, kept from mains sockets',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\bsockets?\b|\boutlets?\b/u,
          /\b(?:mains|wall|outlets?|power)\b/u,
          /\b(?:not|never|no|away|keep|kept|clear|\w+n't|far)\b/u,
        ),
        all(/\b(?:plugs?|leads?)\b/u, counting),
      ],
      draft: 'One bare lead belongs to each set: it is counted, and kept away from mains sockets.',
      draftAmerican: 'One bare lead belongs to each set: it is counted, and kept away from wall outlets.',
    },
  ],
};

const meterSocket: Hazard = {
  code: 'meter-socket',
  about: 'the sockets of a multimeter',
  why: 'A lead in the ampere socket makes the meter a short circuit across the supply.',
  causes: (scene) => inText(scene, /\b(?:multi-?meters?|dmms?)\b/gu, 'done'),
  notes: [
    {
      name: 'keep the lead out of the ampere socket',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\b(?:ampere|amps?|ammeter|current|10 ?a|ma|a)\b[- ]*(?:\/ ?ma )?(?:socket|input|range|terminal|jack|setting)s?\b/u,
        ),
        all(
          /\bvolts?\b|\bvoltage\b|\bv ?ω?(?: ?\/ ?ω)?\b/u,
          /\b(?:sockets?|inputs?|jacks?|terminals?)\b/u,
          /\b(?:com|only|check|red|must|use|plug\w*|lead)\b/u,
        ),
      ],
      draft: 'Keep the lead of the meter out of its ampere socket: there it would short-circuit the supply.',
    },
  ],
};

const pins: Hazard = {
  code: 'pins',
  about: 'pins',
  why: 'Pins prick, and those that fall are trodden on or found by the next class.',
  causes: (scene) =>
    inText(
      scene,
      /\b(?:drawing|map|mapping|push|panel|optical|steel|brass|dressmaking|dressmakers'?) ?pins?\b|\bthumb ?tacks?\b|\bpins\b|\bpin (?:the|it|them|each|both|down)\b|\bpinned\b/gu,
    ),
  notes: [
    {
      name: 'count the pins',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\b(?:pins?|thumb ?tacks?|tacks?)\b/u,
          new RegExp(
            `${counting.source}|\\b(?:lose|lost|loose|dropped|floor|none (?:is|are) left|pick up|box|prick\\w*)\\b`,
            'u',
          ),
        ),
      ],
      draft: 'Count the pins out and in; none is left on the bench or the floor.',
    },
  ],
};

const paperDust: Hazard = {
  code: 'paper-dust',
  about: 'graphite and carbon',
  why: 'Graphite and carbon rub off on hands, books and into meters.',
  causes: (scene) => inSetups(scene, ({ paper }) => paper?.span, 'The paper stands here.'),
  notes: [
    {
      name: 'wash hands or wipe the bench afterwards',
      serves: 'bench',
      severity: 'note',
      said: [
        all(/\bhands?\b|\bfingers?\b/u, handwashing),
        all(/\b(?:wipe|clean|wash)\w*/u, /\b(?:bench|benches|desks?|tables?|surfaces?|meters?)\b/u),
      ],
      draft: 'Wash your hands afterwards: graphite and carbon rub off.',
    },
  ],
};

const leadsTrailing: Hazard = {
  code: 'leads-trailing',
  about: 'long leads',
  why: 'People trip over leads and pull the set-up down.',
  causes: (scene) =>
    inText(
      scene,
      /\b(?:[2-9]|[1-9]\d|1\.[1-9]\d?|[2-9]\.\d+) ?m(?: long)? (?:4 mm )?(?:leads?|cables?|wires?|cords?)\b|\b(?:leads?|cables?|wires?|cords?) (?:of |[\w ]{0,12}longer than |, )?(?:[1-9]\d*(?:\.\d+)?) m\b|\bacross (?:the |an )?(?:aisles?|gangways?)\b/gu,
    ),
  notes: [
    {
      name: 'lay the leads along the bench',
      serves: 'bench',
      severity: 'note',
      said: [
        all(
          /\b(?:leads?|cables?|wires?|cords?)\b/u,
          /\b(?:along|trip\w*|trail\w*|route\w*|aisles?|floor|gangways?|tidy|walkways?|off the)\b/u,
        ),
      ],
      draft: 'Lay the leads along the bench, so that nobody trips over them.',
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

export const benchHazards: readonly Hazard[] = [
  copperEdges,
  sharpPoints,
  metalOverhang,
  cuttingTools,
  probePoint,
  probePlug,
  meterSocket,
  pins,
  leadsTrailing,
  paperDust,
];
