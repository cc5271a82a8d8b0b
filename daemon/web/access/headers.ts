import type { RequestHandler } from 'express';
import { readHost } from './host.ts';

/**
 * Headers that every answer carries: nothing from elsewhere, nothing inline, no framing. The socket's own scheme is
 * named beside 'self', since older browsers don't count ws: as the same origin. Runs after the Host is checked.
 */
export const securityHeaders: RequestHandler = (request, response, next) => {
  const host = readHost(request.headers.host ?? '')?.written;
  response.set({
    'Content-Security-Policy': contentPolicy(host === undefined ? '' : ` ws://${host} wss://${host}`),
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
  });
  next();
};

const contentPolicy = (sockets: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' data:",
    "font-src 'self'",
    "media-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    `connect-src 'self'${sockets}`,
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
