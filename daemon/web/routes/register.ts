import { type Express, type Request, type RequestHandler, type Response } from 'express';
import { webWords } from '../../../shared/words/web.ts';
import { Trouble } from '../problem.ts';
import { readJson } from './read-body.ts';
import type { Answer, Route } from './route.ts';
import { sendChunks } from './send-chunks.ts';

/** Puts every route of the table on the server, and a refusal on every method that a path does not take. */
export function register(app: Express, routes: readonly Route[]): void {
  for (const path of new Set(routes.map((route) => route.path))) {
    const here = routes.filter((route) => route.path === path);
    for (const route of here) app[route.method](expressPath(path), handler(route));
    app.all(expressPath(path), wrongMethod(here));
  }
}

const expressPath = (path: string): string => path.replaceAll(/\{(\w+)\}/g, ':$1');

function handler(route: Route): RequestHandler {
  return async (request, response) => {
    const body = route.body === null ? undefined : await readJson(request);
    const { params, query } = request;
    await give(
      await route.handle({ params, query, body, ifMatch: request.get('if-match') }),
      request,
      response,
    );
  };
}

function wrongMethod(here: readonly Route[]): RequestHandler {
  const allowed = here.flatMap(({ method }) => (method === 'get' ? ['GET', 'HEAD'] : [method.toUpperCase()]));
  const list = allowed.join(', ');
  return (request, response, next) => {
    response.set('Allow', list);
    next(new Trouble(405, webWords.wrongMethod(request.method, request.path, list)));
  };
}

async function give(answer: Answer, request: Request, response: Response): Promise<void> {
  switch (answer.kind) {
    case 'done':
      response.status(204).end();
      return;
    case 'json':
      if (answer.etag !== undefined) response.set('ETag', answer.etag);
      response.json(answer.body);
      return;
    case 'csv':
      response.type('text/csv').set('Content-Disposition', `attachment; filename="${answer.fileName}"`);
      if (request.method === 'HEAD') response.end();
      else await sendChunks(response, answer.chunks);
  }
}
