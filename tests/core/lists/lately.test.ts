import { Lately } from '../../../src/core/lists/lately';

describe('what was worked out lately', () => {
  const counted = (most: number) => {
    const lately = new Lately<{ readonly name: string }, string>(most);
    const made: string[] = [];
    const ask = (thing: { readonly name: string }, asked: number): string =>
      lately.get(thing, asked, () => {
        made.push(`${thing.name}${asked}`);
        return `${thing.name}${asked}`;
      });
    return { ask, made };
  };

  test('is found again by the thing itself and what is asked of it', () => {
    const { ask, made } = counted(2);
    const [one, alike] = [{ name: 'a' }, { name: 'a' }];
    expect([ask(one, 1), ask(one, 2), ask(one, 1), ask(alike, 1)]).toEqual(['a1', 'a2', 'a1', 'a1']);
    expect(made).toEqual(['a1', 'a2', 'a1']);
  });

  test('is forgotten, the first first, where there are more things than it holds', () => {
    const { ask, made } = counted(2);
    const [a, b, c] = ['a', 'b', 'c'].map((name) => ({ name }));
    for (const thing of [a, b, c, b, c]) ask(thing!, 1);
    expect(made).toEqual(['a1', 'b1', 'c1']);
    ask(a!, 1);
    expect(made).toEqual(['a1', 'b1', 'c1', 'a1']);
  });
});
