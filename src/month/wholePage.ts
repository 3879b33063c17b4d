import { createHash } from 'node:crypto';
import { markup, Markup } from './markup';

/**
 * A page of HTML that needs nothing else: its style is in it, and by its own policy it may take no other style, run no
 * script, fetch nothing and send nothing.
 * @param title in the browser's tab
 * @param style CSS of our own
 * @param body what stands on it
 */
export const wholePage = (title: string, style: string, body: Markup): string =>
  markup`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'sha256-${hashOf(style)}'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${new Markup(style)}</style>
</head>
<body>
${body}
</body>
</html>
`.text;

/** The one style that the page may have (CSP level 3, 2.3.1: base64 of its SHA-256). */
const hashOf = (style: string): string => createHash('sha256').update(style).digest('base64');
