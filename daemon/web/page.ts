import { existsSync } from 'node:fs';
import { join, sep } from 'node:path';
import express, { type RequestHandler } from 'express';
import { webWords } from '../../shared/words/web.ts';

/**
 * The page as it was built into `dir`. What lies under assets/ carries a digest of its content in its name and never
 * changes; everything else is asked for again each time, so that a new build is seen at once.
 */
export function pageFiles(dir: string): RequestHandler {
  const assets = join(dir, 'assets') + sep;
  return express.static(dir, {
    cacheControl: false,
    dotfiles: 'ignore',
    redirect: false,
    setHeaders: (response, path) =>
      response.setHeader(
        'Cache-Control',
        path.startsWith(assets) ? 'public, max-age=31536000, immutable' : 'no-cache',
      ),
  });
}

/** What the page's address says while there is no page. */
export function pageMissing(dir: string): RequestHandler {
  return (request, response, next) => {
    if (request.path !== '/' || existsSync(join(dir, 'index.html'))) next();
    else
      response
        .status(503)
        .set('Cache-Control', 'no-store')
        .type('text/plain')
        .send(`${webWords.pageNotBuilt}\n`);
  };
}
