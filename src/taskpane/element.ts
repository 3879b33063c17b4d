type Child = Node | string | undefined | false;

/**
 * Makes an element. Text goes in as text nodes and attributes by setAttribute, so nothing that comes from a
 * cell can become markup.
 */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, string>>,
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...children.filter((child): child is Node | string => child !== undefined && child !== false));
  return made;
}
