import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ListenFailure } from '../../../daemon/web/listen.ts';
import { problemSchema } from '../../../shared/messages/command.ts';
import { fakeDesk, fakeReader } from './support/fake-desk.ts';
import { rawRequest, rawStream } from './support/raw.ts';
import { summary } from './support/record-samples.ts';
import { running, TestClient } from './support/running.ts';

/** A folder as a build leaves it. */
function built(): string {
  const dir = mkdtempSync(join(tmpdir(), 'page-'));
  mkdirSync(join(dir, 'assets'));
  writeFileSync(join(dir, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(dir, 'assets', 'app-1a2b3c.js'), 'export {};');
  writeFileSync(join(dir, '.hidden'), 'no');
  return dir;
}

describe('listening', () => {
  it('says where, and refuses a port that is taken', async () => {
    const { web } = await running();
    expect(web.address).toBe(`http://127.0.0.1:${web.port}`);
    const second = running({ listen: { host: '127.0.0.1', port: web.port } });
    await expect(second).rejects.toBeInstanceOf(ListenFailure);
    await expect(second).rejects.toMatchObject({
      failure: 'in-use',
      message: expect.stringContaining(String(web.port)),
    });
    await web.close();
  });

  it('refuses an address that is not this machine’s', async () => {
    // 203.0.113.0/24 is for documentation only (RFC 5737).
    const there = running({ listen: { host: '203.0.113.7', port: 0 } });
    await expect(there).rejects.toMatchObject({
      failure: 'no-such-address',
      message: expect.stringContaining('203.0.113.7'),
    });
  });

  it('takes an IPv6 address with or without brackets', async () => {
    const { web } = await running({ listen: { host: '[::1]', port: 0 } });
    expect(web.address).toBe(`http://[::1]:${web.port}`);
    expect((await fetch(`${web.address}/api/health`)).status).toBe(200);
    await web.close();
  });
});

describe('who may come in', () => {
  it('is decided by Host and Origin, on every address', async () => {
    const { web } = await running();
    const own = `127.0.0.1:${web.port}`;
    for (const path of ['/', '/api/live', '/api/nothing', '/assets/x.js']) {
      const wrong = await rawRequest(web.port, path, { host: 'evil.example' });
      expect([path, wrong.status]).toEqual([path, 403]);
      expect(problemSchema.parse(JSON.parse(wrong.text)).error.message).toContain(web.address);
      const across = await rawRequest(web.port, path, { host: own, origin: 'http://evil.example' });
      expect([path, across.status]).toEqual([path, 403]);
    }
    const posted = await rawRequest(web.port, '/api/source', { host: own, origin: 'null' }, 'POST');
    expect(posted.status).toBe(403);
    const good = await rawRequest(web.port, '/api/live', { host: own, origin: `http://${own}` });
    expect(good.status).toBe(200);
    await web.close();
  });

  it('beyond this machine may look and not command', async () => {
    const { web, url, desk } = await running({ listen: { host: '0.0.0.0', port: 0 } });
    expect(web.address).toBe(`http://localhost:${web.port}`);
    for (const [method, path] of [
      ['POST', '/api/sessions'],
      ['PUT', '/api/irons/small'],
      ['POST', '/api/alarms/silence'],
      ['DELETE', '/api/irons/small'],
    ] as const) {
      const answer = await fetch(url + path, { method, headers: { 'content-type': 'application/json' } });
      expect([path, answer.status]).toEqual([path, 403]);
      expect(problemSchema.parse(await answer.json()).error.message).toContain('not commanded');
    }
    expect(desk.calls).toEqual([]);
    expect((await fetch(`${url}/api/live`)).status).toBe(200);
    const client = new TestClient(web);
    await client.until((all) => all.length === 1);
    await client.end();
    await web.close();
  });
});

describe('the page', () => {
  it('is asked for again each time, its digested files never', async () => {
    const { web, url } = await running({ pageDir: built() });
    const index = await fetch(`${url}/`);
    expect([index.status, index.headers.get('cache-control')]).toEqual([200, 'no-cache']);
    expect(await index.text()).toContain('<title>page</title>');
    const asset = await fetch(`${url}/assets/app-1a2b3c.js`);
    expect(asset.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(asset.headers.get('content-type')).toContain('text/javascript');
    expect((await fetch(`${url}/.hidden`)).status).toBe(404);
    expect((await fetch(`${url}/..%2f..%2fetc%2fpasswd`)).status).toBeGreaterThanOrEqual(400);
    await web.close();
  });

  it('comes with headers that let in nothing from elsewhere and nothing inline', async () => {
    const { web, url } = await running({ pageDir: built() });
    const { headers } = await fetch(`${url}/`);
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(policy).toContain(`connect-src 'self' ws://127.0.0.1:${web.port} wss://127.0.0.1:${web.port};`);
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    // No part of a Host that is not ours ends up in a header.
    const hostile = await rawRequest(web.port, '/', { host: "x'; script-src *" });
    expect(hostile.status).toBe(403);
    expect(hostile.headers['content-security-policy']).toContain("connect-src 'self';");
    await web.close();
  });

  it('says so where it is not built', async () => {
    const { web, url } = await running();
    const answer = await fetch(`${url}/`);
    expect(answer.status).toBe(503);
    expect(answer.headers.get('content-type')).toContain('text/plain');
    expect(await answer.text()).toContain('npm start');
    await web.close();
  });
});

describe('closing', () => {
  it('ends streams, answers under way, idle connections and silent ones within a second', async () => {
    const endless = fakeReader({
      readingsCsv: async function* () {
        for (;;) yield await Promise.resolve('x'.repeat(65_536));
      },
    });
    const { web, url, desk } = await running({}, fakeDesk({ reader: endless }));
    const polite = new TestClient(web);
    await polite.until((all) => all.length === 1);
    await rawStream(web.port);
    connect(web.port, '127.0.0.1').on('error', () => {});
    await fetch(`${url}/api/health`);
    const download = await fetch(`${url}/api/sessions/${summary.id}/readings.csv`);
    const beforeMs = performance.now();
    await web.close();
    expect(performance.now() - beforeMs).toBeLessThan(1000);
    expect(await polite.closed).toEqual({ code: 1001, why: 'The program is being stopped.' });
    await expect(download.text()).rejects.toThrow();
    expect(desk.listeners).toBe(0);
    await expect(fetch(`${url}/api/health`)).rejects.toThrow();
  });
});
