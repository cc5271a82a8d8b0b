import { describe, expect, it } from 'vitest';
import type { ProbeSource, SourceEvent } from '../../../daemon/probe/source.ts';
import { Devices } from '../../../daemon/watching/devices.ts';

/** A device that notes what it is sent. */
function board() {
  const sent: string[] = [];
  const listeners: ((event: SourceEvent) => void)[] = [];
  const source: ProbeSource = {
    device: { id: 'board', path: '/dev/ttyT0', simulated: false },
    start: (listen) => {
      listeners.push(listen);
    },
    send: (line) => sent.push(line),
    status: () => {
      throw new Error('is not asked here');
    },
    stop: () => Promise.resolve(),
  };
  const connect = (): void => {
    for (const tell of listeners) tell({ kind: 'link', link: 'connected', detail: '', tMs: 0 });
  };
  return { source, sent, connect };
}

const devices = (): Devices =>
  new Devices({ sample: () => undefined, aboutDevice: () => undefined, changed: () => undefined });

describe('a handle that is the only one to be heard', () => {
  it('is told once, and once when that is over, without a word about an alarm', () => {
    const all = devices();
    const { source, sent } = board();
    all.add(source);
    all.heard(true);
    expect(sent).toEqual([]);
    all.heard(false);
    all.heard(false);
    expect(sent).toEqual(['heard=0']);
    all.heard(true);
    expect(sent).toEqual(['heard=0', 'heard=1']);
  });

  it('is told while an alarm sounds too, and the alarm stays as loud as it was', () => {
    const all = devices();
    const { source, sent } = board();
    all.add(source);
    all.lamp(3);
    all.heard(false);
    all.heard(true);
    expect(sent).toEqual(['alarm=3', 'heard=0', 'heard=1']);
  });

  it('is told again after it was lost, for as long as it holds', () => {
    const all = devices();
    const { source, sent, connect } = board();
    all.add(source);
    connect();
    expect(sent).toEqual([]);
    all.heard(false);
    connect();
    all.heard(true);
    connect();
    expect(sent).toEqual(['heard=0', 'heard=0', 'heard=1']);
  });
});
