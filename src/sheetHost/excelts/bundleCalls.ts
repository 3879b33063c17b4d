import type { Bundle, BundleFunction } from '../bundle';
import { callAsExcel, type CallResult } from '../callAsExcel';
import { engineName, LEFT_OUT, LINK, NO_SPILL } from '../engineFormula';
import { isBusy, isCellError, type CellError, type HostManners } from '../hostValues';
import {
  argumentOf,
  engineError,
  engineResult,
  ERROR,
  keyOf,
  LEFT_OUT_VALUE,
  type EngineValue,
} from './engineValues';

interface RememberedCall {
  readonly result: CallResult;
  /** The answer is still to come. */
  readonly awaited: boolean;
  used: boolean;
}

interface EngineFunction {
  readonly minArity: number;
  readonly maxArity: number;
  readonly invoke: (args: unknown[]) => unknown;
}

/** The calls of the bundle's functions: made, remembered, and their messages kept for the cells they stand in. */
export class BundleCalls {
  private bundle: Bundle | undefined;
  private readonly remembered = new Map<string, RememberedCall>();
  /** By the number of a cell: results with an error in them, of the calls in its formula. */
  private readonly errors = new Map<number, CallResult[]>();
  /** By the number of a cell: where its HYPERLINK leads, as the formula says it. */
  private readonly links = new Map<number, string>();

  /** @param addressOf a cell by its number */
  constructor(
    private readonly manners: HostManners,
    private readonly addressOf: (cellNumber: number) => string | undefined,
  ) {}

  register(bundle: Bundle): void {
    this.bundle = bundle;
    this.remembered.clear();
  }

  get functions(): ReadonlyMap<string, BundleFunction> {
    return this.bundle?.functions ?? new Map();
  }

  /** Before all formulas are computed anew. */
  startPass(): void {
    this.errors.clear();
    this.links.clear();
  }

  /** Where the HYPERLINK in a cell's formula leads, as the formula says it. */
  link(cellNumber: number): string | undefined {
    return this.links.get(cellNumber);
  }

  /** The functions as the engine calls them. */
  engineFunctions(): Map<string, EngineFunction> {
    const functions = new Map<string, EngineFunction>();
    functions.set(LEFT_OUT, { minArity: 0, maxArity: 0, invoke: () => LEFT_OUT_VALUE });
    functions.set(NO_SPILL, { minArity: 0, maxArity: 0, invoke: () => engineError('#SPILL!') });
    functions.set(LINK, {
      minArity: 2,
      maxArity: 3,
      invoke: ([cell, target, shown = target]) => {
        const { kind, value } = target as { readonly kind: number; readonly value?: unknown };
        if (typeof value === 'string') this.links.set((cell as { value: number }).value, value);
        return kind === ERROR ? target : shown;
      },
    });
    const { bundle } = this;
    if (!bundle) return functions;
    for (const [name, described] of bundle.functions) {
      functions.set(engineName(name), {
        minArity: 1,
        // The number of the cell comes before the arguments.
        maxArity: Number.MAX_SAFE_INTEGER,
        invoke: ([cell, ...args]) =>
          this.call(bundle, described, (cell as { value: number }).value, args as EngineValue[]),
      });
    }
    return functions;
  }

  private call(
    bundle: Bundle,
    described: BundleFunction,
    cell: number,
    args: readonly EngineValue[],
  ): EngineValue {
    const key = described.id + args.map(keyOf).join('\u0001');
    let remembered = this.remembered.get(key);
    // Whoever computes aside has to hear of every cell that waits for it.
    if (remembered && !remembered.awaited) remembered.used = true;
    else {
      const address = this.addressOf(cell);
      let provisional = false;
      const heard = (...values: unknown[]): unknown => {
        const returned = described.call(...values);
        provisional = bundle.isProvisional?.(returned) === true;
        return returned;
      };
      const result = callAsExcel(
        { ...described, call: heard },
        args.map(argumentOf),
        this.manners,
        bundle.runtime,
        address,
      );
      const awaited = provisional || isBusy(result[0]?.[0] ?? null);
      this.remembered.set(key, (remembered = { result, awaited, used: true }));
    }
    const { result } = remembered;
    if (result.some((row) => row.some((c) => isCellError(c) && c.message !== undefined))) {
      const errors = this.errors.get(cell);
      if (errors) errors.push(result);
      else this.errors.set(cell, [result]);
    }
    return engineResult(result);
  }

  /** A call with the same values gives the same result, as the host too supposes; what was not asked again goes. */
  forgetUnused(): void {
    for (const [key, call] of this.remembered) {
      if (call.used) call.used = false;
      else this.remembered.delete(key);
    }
  }

  /** The engine carries codes only: the message is that of the call in the cell's formula that gave this code here. */
  withMessage(error: CellError, cellNumber: number, row: number, column: number): CellError | undefined {
    for (const result of this.errors.get(cellNumber) ?? []) {
      const alone = result.length === 1 && result[0]?.length === 1;
      const here = result[row]?.[column] ?? (alone ? result[0]?.[0] : null);
      if (isCellError(here) && here.code === error.code && here.message !== undefined) return here;
    }
    return undefined;
  }
}
