import { expect, it } from 'vitest';
import { alarm, BIG, live, probe } from '../../fixtures/scenes.ts';
import { Bench } from './bench.ts';

const bench = Bench.ofFile();

it.each([
  ['in the page', []],
  ['among alarms', [alarm({ kind: 'above-band', priority: 1, probe: null, peakC: null })]],
])(
  'a burst of readings is shown no more than once a frame, the last of them at the end: %s',
  async (_, alarms) => {
    const { page, daemon } = await bench.show(live([probe(250)], alarms));
    daemon.freeze();
    await page.evaluate(() => {
      const counted = { frames: 0, numbers: 0 };
      const count = () => {
        counted.frames += 1;
        requestAnimationFrame(count);
      };
      requestAnimationFrame(count);
      const plate = document.querySelector('[data-testid="plate"]');
      if (plate === null) throw new Error('no plate temperature');
      new MutationObserver(() => (counted.numbers += 1)).observe(plate, {
        characterData: true,
        subtree: true,
      });
      Object.assign(globalThis, { counted });
    });
    for (let f = 251; f <= 350; f++) daemon.say({ kind: 'readings', probes: [probe(f, { id: BIG })] });
    daemon.say({ kind: 'readings', probes: [probe(300, { id: BIG })] });
    await page.getByText('300', { exact: true }).first().waitFor();
    const { frames, numbers } = await page.evaluate(
      () => (globalThis as unknown as { counted: { frames: number; numbers: number } }).counted,
    );
    expect(numbers).toBeGreaterThan(0);
    expect(numbers).toBeLessThanOrEqual(frames);
    expect(numbers).toBeLessThan(50);
    // What was overtaken before it could be shown is in the trace all the same.
    await page.getByRole('img', { name: /250 °F.*350 °F/ }).waitFor();
  },
  60_000,
);
