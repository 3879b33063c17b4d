import type { CellError } from '../core/measures/readQuantity';
import { hostFunction } from './callFunction';
import { FUNCTIONS } from './functions';

/** The entry of functions.js: joins every described function to its id in functions.json. */
const hostError = (code: string, message?: string): CellError =>
  new CustomFunctions.Error(code as CustomFunctions.ErrorCode, message);

for (const description of FUNCTIONS) {
  CustomFunctions.associate(description.id, hostFunction(description, hostError));
}
