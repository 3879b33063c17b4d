/**
 * Tells the developer's console of a fault that nobody foresaw, with its stack; the cell only says that there was
 * one.
 * @param id the function's id without its namespace
 */
export function reportFault(id: string, fault: unknown): void {
  console.error(`CARRY.${id} failed:`, fault);
}
