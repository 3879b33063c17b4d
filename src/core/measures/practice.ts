/** The source of what stands in no document. */
export const PRACTICE = 'common practice, no source';
