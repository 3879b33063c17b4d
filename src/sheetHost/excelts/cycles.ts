/** The nodes that lie on a cycle: Tarjan's strongly connected components, without recursion. */
export function onCycles<Node>(nodes: readonly Node[], next: (node: Node) => readonly Node[]): Node[] {
  const index = new Map<Node, number>();
  const low = new Map<Node, number>();
  const stack: Node[] = [];
  const onStack = new Set<Node>();
  const found: Node[] = [];
  for (const root of nodes) {
    if (index.has(root)) continue;
    const work: { node: Node; to: readonly Node[]; at: number }[] = [];
    const open = (node: Node) => {
      index.set(node, index.size);
      low.set(node, index.get(node)!);
      stack.push(node);
      onStack.add(node);
      work.push({ node, to: next(node), at: 0 });
    };
    open(root);
    while (work.length > 0) {
      const step = work[work.length - 1]!;
      if (step.at < step.to.length) {
        const to = step.to[step.at++]!;
        if (!index.has(to)) open(to);
        else if (onStack.has(to)) low.set(step.node, Math.min(low.get(step.node)!, index.get(to)!));
        continue;
      }
      work.pop();
      const parent = work[work.length - 1];
      if (parent) low.set(parent.node, Math.min(low.get(parent.node)!, low.get(step.node)!));
      if (low.get(step.node) !== index.get(step.node)) continue;
      const component: Node[] = [];
      for (;;) {
        const node = stack.pop()!;
        onStack.delete(node);
        component.push(node);
        if (node === step.node) break;
      }
      if (component.length > 1 || step.to.includes(step.node)) found.push(...component);
    }
  }
  return found;
}
