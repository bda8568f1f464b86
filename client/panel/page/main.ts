/** The page of the drawing panel. */
export {};
