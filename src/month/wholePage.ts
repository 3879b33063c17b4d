import { markup, Markup } from './markup';

/**
 * A page of HTML that needs nothing else: its style is in it, and it may run no script and fetch nothing.
 * @param title in the browser's tab
 * @param style CSS of our own
 * @param body what stands on it
 */
export const wholePage = (title: string, style: string, body: Markup): string =>
  markup`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${new Markup(style)}</style>
</head>
<body>
${body}
</body>
</html>
`.text;
