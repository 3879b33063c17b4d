/**
 * What was worked out lately of things that do not change, found again by the thing itself and what is asked of it: a cache,
 * which changes no answer. It holds on to so many things at most; the one that was made first is let go first.
 */
export class Lately<Thing extends object, Answer> {
  private readonly kept = new Map<Thing, Map<number | string, Answer>>();

  /** @param most things that are kept */
  constructor(private readonly most: number) {}

  /** What was worked out for this thing when this was asked of it, or is now. */
  get(thing: Thing, asked: number | string, make: () => Answer): Answer {
    const known = this.kept.get(thing);
    const answer = known?.get(asked);
    if (answer !== undefined) return answer;
    const made = make();
    if (known) known.set(asked, made);
    else {
      for (const first of this.kept.keys()) {
        if (this.kept.size < this.most) break;
        this.kept.delete(first);
      }
      this.kept.set(thing, new Map([[asked, made]]));
    }
    return made;
  }
}
