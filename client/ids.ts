/** Every id that the manifest and the code share; a test holds them against package.json. */
export const commandIds = {
  newSheet: 'papervolt.newSheet',
  showDrawing: 'papervolt.showDrawing',
  printSheet: 'papervolt.printSheet',
  describeDrawing: 'papervolt.describeDrawing',
  copyDrawing: 'papervolt.copyDrawing',
  showForPupils: 'papervolt.showForPupils',
  showForTeachers: 'papervolt.showForTeachers',
  showForTechnicians: 'papervolt.showForTechnicians',
  fixAll: 'papervolt.fixAll',
  formatBlocks: 'papervolt.formatBlocks',
  restart: 'papervolt.restart',
  showLog: 'papervolt.showLog',
  explain: 'papervolt.explain',
  openGuide: 'papervolt.openGuide',
} as const;

export const settingIds = {
  hints: 'papervolt.hints',
  lenses: 'papervolt.lenses',
  reader: 'papervolt.preview.reader',
  formatDocuments: 'papervolt.format.documents',
  thumbnails: 'papervolt.thumbnails',
} as const;

/** Context keys that the manifest's menus ask for. */
export const contextIds = {
  /** A sheet is in front, or beside the preview or panel that is. */
  inSheet: 'papervolt.inSheet',
  /** A sheet has been seen, so that the language server runs. */
  running: 'papervolt.running',
} as const;

export const statusId = 'papervolt.status';

/** The client's name and, in findings, their source. */
export const clientId = 'papervolt';

/** Kinds of code actions that the server offers for a whole text. */
export const actionKinds = { fixAll: 'source.fixAll.papervolt', format: 'source.format.papervolt' } as const;

/** The language server's program, below the extension's folder. */
export const serverFile = ['dist', 'language-server.js'] as const;
