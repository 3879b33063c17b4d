import { lastOf } from '../../core/lists/ends';

/** The nodes that lie on a cycle: Tarjan's strongly connected components, without recursion. */
export function onCycles<Node>(nodes: readonly Node[], next: (node: Node) => readonly Node[]): Node[] {
  const met = new Map<Node, Visit<Node>>();
  const stack: Visit<Node>[] = [];
  const found: Node[] = [];
  for (const root of nodes) {
    if (met.has(root)) continue;
    const work: Visit<Node>[] = [];
    const open = (node: Node) => {
      const to = next(node);
      const visit = { node, to, rest: to.values(), index: met.size, low: met.size, onStack: true };
      met.set(node, visit);
      stack.push(visit);
      work.push(visit);
    };
    open(root);
    while (work.length > 0) {
      const step = lastOf(work);
      const way = step.rest.next();
      if (!way.done) {
        const to = met.get(way.value);
        if (!to) open(way.value);
        else if (to.onStack) step.low = Math.min(step.low, to.index);
        continue;
      }
      work.pop();
      const parent = work[work.length - 1];
      if (parent) parent.low = Math.min(parent.low, step.low);
      if (step.low !== step.index) continue;
      const component = stack.splice(stack.lastIndexOf(step)).reverse();
      for (const visit of component) visit.onStack = false;
      if (component.length > 1 || step.to.includes(step.node)) {
        found.push(...component.map(({ node }) => node));
      }
    }
  }
  return found;
}

/** A node that was met: how far its ways are followed, and the earliest node met that it leads back to. */
interface Visit<Node> {
  readonly node: Node;
  readonly to: readonly Node[];
  readonly rest: IterableIterator<Node>;
  readonly index: number;
  low: number;
  onStack: boolean;
}
