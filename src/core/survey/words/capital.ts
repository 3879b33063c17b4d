/** A word with a capital letter. */
export const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
