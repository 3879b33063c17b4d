/**
 * Answers of a function that depends on its key alone, kept as long as there is room: a cache, which changes no answer.
 * What was not asked for lately is forgotten first.
 */
export class Remembered<Answer> {
  private young = new Map<string, Answer>();
  private old = new Map<string, Answer>();

  /** @param most answers kept for certain; up to twice as many are */
  constructor(private readonly most: number) {}

  /** What was worked out for this key, or is now. */
  get(key: string, make: () => Answer): Answer {
    const known = this.young.get(key);
    if (known !== undefined) return known;
    const answer = this.old.get(key) ?? make();
    if (this.young.size >= this.most) {
      this.old = this.young;
      this.young = new Map();
    }
    this.young.set(key, answer);
    return answer;
  }
}
