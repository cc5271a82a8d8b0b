import { expect, it } from 'vitest';
import { linkOf, NO_LINK } from '../../../daemon/book/store/link.ts';

it('links are those that sha256sum gives for the bytes in the description', () => {
  const first = linkOf(NO_LINK, '{"id":"a"}', {
    index: 0,
    untilSeq: 3,
    untilMs: 1200,
    peakC: 121.25,
    samples: 2,
    findings: 1,
    block: Uint8Array.of(1, 2, 3),
    ending: null,
    inputs: [{ seq: 1, tMs: 1000, json: '{"kind":"time"}' }],
    found: [{ seq: 2, tMs: 1100, json: '{"kind":"heat","change":"hot"}' }],
  });
  // (head -c 32 /dev/zero; printf '%s' '["soleplate-link-1",0,"{\"id\":\"a\"}",3,1200,121.25,2,1,
  // [[1,1000,"{\"kind\":\"time\"}"]],[[2,1100,"{\"kind\":\"heat\",\"change\":\"hot\"}"]],null]';
  // printf '\x01\x02\x03') | sha256sum, in one line
  expect(Buffer.from(first).toString('hex')).toBe(
    'b56d251d65dc127c3d1ec76ff8b0915e5c2c93ddfce157c4c3686ceca98a1772',
  );
  const second = linkOf(first, '{"id":"a"}', {
    index: 1,
    untilSeq: 9,
    untilMs: 2000,
    peakC: null,
    samples: 2,
    findings: 1,
    block: new Uint8Array(),
    ending: '{"why":"cold","atUtc":"2026-03-01T08:00:02.000+00:00"}',
    inputs: [],
    found: [],
  });
  // The same with the bytes of the first link in place of the zeros, null in place of the head, no block.
  expect(Buffer.from(second).toString('hex')).toBe(
    'a4aeb7a5c1d59ba21bfc5c1a0ca5ef51f5418c2e4ae295eacbf6b792b2cf1a6b',
  );
});
