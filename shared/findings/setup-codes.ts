import type { CatalogueEntry } from './entry.ts';

/** Findings made by the room `setup`: what the lines of a block mean together. */
export const setupCodes = {
  'setup-name-twice': { severity: 'error', meaning: 'Two setups of a sheet have one name.' },
  'like-unknown': { severity: 'error', meaning: 'A block is like a setup that does not exist.' },
  'like-circular': { severity: 'error', meaning: 'Setups are like each other in a circle.' },
  'variation-alone': {
    severity: 'error',
    meaning: 'A line varies another setup in a block that is like none.',
  },
  'move-form': { severity: 'error', meaning: 'A move that does not suit the form of the line it moves.' },
  'line-twice': { severity: 'error', meaning: 'A line that may stand only once in a block stands again.' },
  'name-twice': { severity: 'error', meaning: 'One name for two different things.' },
  'name-unknown': { severity: 'error', meaning: 'A name that nothing in the setup has.' },
  'name-kind': {
    severity: 'error',
    meaning: 'A name of the wrong kind: a probe where an electrode belongs.',
  },
  'name-inherited': {
    severity: 'error',
    meaning: 'A new line under a name that the other setup already gives.',
  },
  'name-gone': { severity: 'error', meaning: 'Something still names what is left out.' },
  'waits-for-line': {
    severity: 'note',
    meaning: 'A line that depends on another one that cannot be used yet.',
  },
  'paper-missing': { severity: 'error', meaning: 'A block without paper.' },
  'paper-size': { severity: 'error', meaning: 'Paper of a size that no bench has.' },
  'supply-missing': { severity: 'error', meaning: 'A block without a supply.' },
  'sheet-resistance-missing': {
    severity: 'error',
    meaning: 'A line that needs the sheet resistance of the paper, which is not given.',
  },
  'circuit-open': {
    severity: 'error',
    meaning: 'No current can flow: nothing stands against the positive or negative metal.',
  },
  'terminal-missing': { severity: 'error', meaning: 'An electrode without a terminal.' },
  'terminal-differs': { severity: 'error', meaning: 'Pieces of one electrode on different terminals.' },
  'terminal-circular': { severity: 'error', meaning: 'Electrodes joined to each other in a circle.' },
  'clip-of-part': {
    severity: 'error',
    meaning: 'A clip on a spike or prong that stands on another electrode.',
  },
  'places-circular': { severity: 'error', meaning: 'Electrodes placed from each other in a circle.' },
  'line-concentric': {
    severity: 'error',
    meaning: 'A line between two things with one centre has no direction.',
  },
  'stand-beyond': {
    severity: 'error',
    meaning: 'A spike or prong stands beside the side that should carry it.',
  },
  'size-impossible': { severity: 'error', meaning: 'A size too small to cut or too large for a bench.' },
  'ring-sizes': { severity: 'error', meaning: 'A hollow shape whose wall leaves no hollow.' },
  'opening-too-wide': { severity: 'error', meaning: 'An opening wider than the hollow it opens.' },
  'opening-direction': { severity: 'error', meaning: 'An opening of a box that faces a corner.' },
  'tip-radius': { severity: 'error', meaning: 'A tip radius that does not fit its spike.' },
  'outline-flat': { severity: 'error', meaning: 'An outline or path that encloses no area.' },
  'outline-crosses': { severity: 'error', meaning: 'An outline or strip that crosses itself.' },
  'off-paper': { severity: 'error', meaning: 'An electrode of which nothing lies on the paper.' },
  'mostly-off-paper': {
    severity: 'warning',
    meaning: 'More than half of a piece, or the end of a bar lying down, is beside the paper.',
  },
  'short-circuit': {
    severity: 'error',
    meaning: 'Electrodes at two fixed potentials touch or nearly touch.',
  },
  'metal-touches': { severity: 'note', meaning: 'Touching electrodes count as one conductor.' },
  'pieces-apart': {
    severity: 'note',
    meaning: 'Pieces of one electrode do not touch and are joined by a lead.',
  },
  'paper-island': { severity: 'note', meaning: 'A piece of paper that touches no electrode.' },
  'solved-later': {
    severity: 'error',
    meaning: 'Physics that can be described and drawn, but is not solved yet.',
  },
  'patch-misses': {
    severity: 'warning',
    meaning: 'A patch, hole or slit where there is nothing for it to act on.',
  },
  'row-flat': { severity: 'error', meaning: 'A row whose two ends are one point.' },
  'row-direction': {
    severity: 'error',
    meaning: 'A row with a direction needs the distances of its readings.',
  },
  'row-uneven': { severity: 'warning', meaning: 'A step that does not divide the row.' },
  'row-count': {
    severity: 'note',
    meaning: 'A number of readings or steps that gives crooked distances where one more or less would not.',
  },
  'row-readings': { severity: 'error', meaning: 'Too few or too many readings for a row.' },
  'reading-off-paper': { severity: 'error', meaning: 'A reading beside the paper or in a hole.' },
  'equipotential-outside': {
    severity: 'warning',
    meaning: 'An equipotential outside the potentials of the metal.',
  },
  'equipotential-uneven': {
    severity: 'warning',
    meaning: 'A step that does not divide the range of the equipotentials.',
  },
  'equipotential-many': { severity: 'error', meaning: 'Too many equipotentials to draw.' },
  'not-solved': { severity: 'error', meaning: 'The field could not be solved.' },
} as const satisfies Record<string, CatalogueEntry>;
