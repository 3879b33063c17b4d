import { entryAt } from './entryAt';

/** The first entry of a list that is known not to be empty. @example firstOf(['door', 'flight']) // 'door' */
export const firstOf = <T>(list: ArrayLike<T>): T => entryAt(list, 0);

/** The last entry of a list that is known not to be empty. @example lastOf(['door', 'flight']) // 'flight' */
export const lastOf = <T>(list: ArrayLike<T>): T => entryAt(list, list.length - 1);
