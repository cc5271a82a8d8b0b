import express, { type ErrorRequestHandler, type Express, type RequestHandler } from 'express';
import type { Logger } from 'pino';
import { webWords } from '../../shared/words/web.ts';
import { securityHeaders } from './access/headers.ts';
import type { AccessRules } from './access/rules.ts';
import { pageFiles, pageMissing } from './page.ts';
import { problemBody, Trouble, troubleOf } from './problem.ts';
import { register } from './routes/register.ts';
import type { Route } from './routes/route.ts';

export interface AppSetup {
  readonly routes: readonly Route[];
  readonly access: AccessRules;
  readonly pageDir: string;
  readonly log: Logger;
}

/** The HTTP side: who may come in, then the table of routes, then the page. */
export function makeApp({ routes, access, pageDir, log }: AppSetup): Express {
  const app = express();
  app.disable('x-powered-by');
  app.set('etag', false);
  app.set('query parser', 'simple');
  app.use(securityHeaders, knownHost(access));
  app.use('/api', fresh, commandsAllowed(access));
  register(app, routes);
  app.use('/api', nothingHere);
  app.use(pageFiles(pageDir), pageMissing(pageDir), nothingHere);
  app.use(problemAnswer(log));
  return app;
}

const knownHost =
  (access: AccessRules): RequestHandler =>
  (request, _response, next) => {
    const refusal = access.refusal(request.headers);
    next(refusal === null ? undefined : new Trouble(403, refusal));
  };

const fresh: RequestHandler = (_request, response, next) => {
  response.set('Cache-Control', 'no-store');
  next();
};

const commandsAllowed =
  (access: AccessRules): RequestHandler =>
  (request, _response, next) => {
    const looksOnly = ['GET', 'HEAD', 'OPTIONS'].includes(request.method);
    next(access.viewOnly && !looksOnly ? new Trouble(403, webWords.viewOnly) : undefined);
  };

const nothingHere: RequestHandler = (request) => {
  throw new Trouble(404, webWords.noSuchAddress(request.originalUrl.split('?')[0]?.slice(0, 200) ?? ''));
};

const problemAnswer =
  (log: Logger): ErrorRequestHandler =>
  (error: unknown, request, response, _next) => {
    const known = troubleOf(error);
    if (known === null)
      log.error({ err: error, method: request.method, path: request.path }, 'a request failed');
    else log.debug({ status: known.status, path: request.path }, known.message);
    if (response.headersSent || response.destroyed) return;
    const trouble = known ?? new Trouble(500, webWords.failed);
    response.status(trouble.status).removeHeader('Content-Disposition');
    // The rest of what is too large is not waited for.
    if (trouble.status === 413) response.set('Connection', 'close');
    response.set('Cache-Control', 'no-store').type('json').json(problemBody(trouble));
  };
