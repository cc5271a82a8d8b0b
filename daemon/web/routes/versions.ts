import { webWords } from '../../../shared/words/web.ts';
import { Trouble } from '../problem.ts';
import type { Answer } from './route.ts';

/** Things of which every version stays: a change says which one it was made from. */

/** What has versions is answered with the one that it is as its ETag. */
export const versioned = (one: { readonly version: number }): Answer => ({
  kind: 'json',
  body: one,
  etag: `"${one.version}"`,
});

/** The version that a change is based on, from the body or from If-Match. */
export function versionSeen(basedOn: number | undefined, ifMatch: string | undefined): number {
  if (ifMatch === undefined) {
    if (basedOn === undefined) throw new Trouble(428, webWords.versionMissing, 'basedOn');
    return basedOn;
  }
  const digits = /^"?(\d{1,15})"?$/.exec(ifMatch.trim())?.[1];
  if (digits === undefined) throw new Trouble(400, webWords.versionUnreadable, 'If-Match');
  const version = Number(digits);
  if (basedOn !== undefined && basedOn !== version)
    throw new Trouble(400, webWords.versionsDiffer(basedOn, version), 'basedOn');
  return version;
}
