/** The error value that a bundle makes and gets, as the host's documents define it. */
export interface RuntimeError {
  readonly code: string;
  readonly message?: string;
}

export type AssociatedFunction = (...values: unknown[]) => unknown;

/** What a bundle finds as its global `CustomFunctions`, and what it has associated. */
export interface CustomFunctionsRuntime {
  readonly global: {
    readonly associate: (
      id: string | Readonly<Record<string, AssociatedFunction>>,
      call?: AssociatedFunction,
    ) => void;
    readonly Error: new (code: string, message?: string) => RuntimeError;
    readonly ErrorCode: Readonly<Record<string, string>>;
  };
  readonly associated: ReadonlyMap<string, AssociatedFunction>;
}

// The values of the enum CustomFunctions.ErrorCode in the documents of the runtime.
const ERROR_CODES = {
  invalidValue: '#VALUE!',
  notAvailable: '#N/A',
  divisionByZero: '#DIV/0!',
  invalidNumber: '#NUM!',
  nullReference: '#NULL!',
  invalidName: '#NAME?',
  invalidReference: '#REF!',
} as const;

class CustomFunctionsError implements RuntimeError {
  readonly code: string;
  readonly message?: string;
  constructor(code: string, message?: string) {
    this.code = code;
    if (message !== undefined) this.message = message;
  }
}

/** A `CustomFunctions` of our own for one bundle: the same in Node and in a page. */
export function customFunctionsRuntime(): CustomFunctionsRuntime {
  const associated = new Map<string, AssociatedFunction>();
  return {
    associated,
    global: {
      associate: (id, call) => {
        const pairs = typeof id === 'string' ? [[id, call] as const] : Object.entries(id);
        for (const [name, value] of pairs) if (value) associated.set(name, value);
      },
      Error: CustomFunctionsError,
      ErrorCode: ERROR_CODES,
    },
  };
}
