/**
 * Makes a function that runs something after all else that waits has had its turn. A message to oneself is not held
 * back as a timer is, which waits 4 ms when it is set again and again and longer in a page that is not in sight.
 */
export function laterByMessage(): (run: () => void) => void {
  const waiting: (() => void)[] = [];
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => waiting.shift()?.();
  return (run) => {
    waiting.push(run);
    port2.postMessage(null);
  };
}
