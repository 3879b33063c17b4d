/**
 * Whether the pane can be seen. Its page goes on running after the pane is closed, since the functions run in it, and
 * it is started without a pane when a workbook with functions opens.
 */
export function paneSight(): { inSight(): boolean; onSight(listener: () => void): void } {
  const listeners: (() => void)[] = [];
  let closed = false;
  // Somebody points at it or types in it, whatever the host says.
  let used = false;
  const inSight = (): boolean => !closed && (used || document.visibilityState !== 'hidden');
  const tell = (): void => {
    if (inSight()) for (const listener of listeners) listener();
  };
  document.addEventListener('visibilitychange', () => {
    used = false;
    tell();
  });
  for (const name of ['pointerdown', 'keydown']) {
    document.addEventListener(name, () => {
      if (inSight()) return;
      closed = false;
      used = true;
      tell();
    });
  }
  const told = (Office.addin as Partial<Office.Addin> | undefined)?.onVisibilityModeChanged?.(
    ({ visibilityMode }) => {
      closed = visibilityMode === Office.VisibilityMode.hidden;
      tell();
    },
  );
  told?.catch((fault: unknown) => console.warn('The host does not say whether the pane is open:', fault));
  return { inSight, onSight: (listener) => void listeners.push(listener) };
}
