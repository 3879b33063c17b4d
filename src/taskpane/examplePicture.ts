import { drawExample, type ExamplePicture } from '../drawing/drawExample';
import type { ExampleOnSheet } from './exampleOnSheet';

/** A worked example in pictures, with its title. */
export interface TitledPicture extends ExamplePicture {
  readonly title: string;
}

/**
 * The worked example that stands on the sheet in pictures, from what is given there now.
 * @returns undefined where the example is no place that a piece passes, or something given is no length
 */
export function examplePicture({ example, given, isAsked }: ExampleOnSheet): TitledPicture | undefined {
  const values = given.filter((value) => value !== undefined);
  if (values.length < example.given.length) return undefined;
  const drawn = drawExample({ id: example.id, given: values, isAsked }, 'pane-example');
  return drawn && { title: example.title, ...drawn };
}
