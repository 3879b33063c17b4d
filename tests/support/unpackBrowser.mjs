// Unpacks the Chromium of the npm package, with the libraries and fonts it carries, into the folder named by
// TMPDIR. A process of its own, because the package takes both the folder and the wish for libraries from the
// environment.
import chromium from '@sparticuz/chromium';

await chromium.executablePath();
