import { registerBundle, type Bundle } from '../bundle';
import { customFunctionsRuntime } from '../customFunctionsRuntime';

/**
 * Runs the built functions.js in this page by a script tag, as the host of the add-in does, and registers it
 * through functions.json. Rejects with the reason when one of them does not come.
 */
export async function pageBundle(): Promise<{ readonly bundle: Bundle; readonly metadata: unknown }> {
  const runtime = customFunctionsRuntime();
  Object.assign(window, { CustomFunctions: runtime.global });
  const answer = await fetch('functions.json');
  if (!answer.ok) throw new Error(`functions.json did not come (${answer.status})`);
  const metadata: unknown = await answer.json();
  await new Promise<void>((loaded, failed) => {
    const script = document.createElement('script');
    script.src = 'functions.js';
    script.addEventListener('load', () => loaded());
    script.addEventListener('error', () => failed(new Error('functions.js did not come')));
    document.head.append(script);
  });
  const bundle = registerBundle(metadata, runtime);
  if (bundle.faults.length > 0) throw new Error(bundle.faults.join('; '));
  return { bundle, metadata };
}
