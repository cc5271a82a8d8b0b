import type { Page } from 'playwright-core';

/**
 * Runs in a page before its own scripts: whatever an audio context plays to its output is listened to on its way. `outputs`
 * are the contexts that the page has made, `heard` gives the loudest stretch since it was last asked.
 */
export const listening = `{
  const outputs = [];
  const analysers = [];
  const connect = AudioNode.prototype.connect;
  AudioNode.prototype.connect = function (to, ...rest) {
    if (to instanceof AudioDestinationNode && to.context instanceof AudioContext) {
      const analyser = new AnalyserNode(to.context, { fftSize: 2048 });
      connect.call(this, analyser);
      analysers.push(analyser);
      outputs.push(to.context);
    }
    return connect.call(this, to, ...rest);
  };
  const samples = new Float32Array(2048);
  const loudnessNow = (analyser) => {
    if (analyser.context.state !== 'running') return 0;
    analyser.getFloatTimeDomainData(samples);
    return Math.sqrt(samples.reduce((sum, s) => sum + s * s, 0) / samples.length);
  };
  Object.assign(globalThis, {
    outputs,
    listenFor: async (ms) => {
      let most = 0;
      const endMs = performance.now() + ms;
      while (performance.now() < endMs) {
        for (const analyser of analysers) most = Math.max(most, loudnessNow(analyser));
        await new Promise((next) => setTimeout(next, 15));
      }
      return most;
    },
  });
}`;

/** The loudest that reaches the output within the next `ms`: the root mean square of 2048 samples, 1 at most. */
export const loudness = (page: Page, ms: number): Promise<number> =>
  page.evaluate(
    (ms) => (globalThis as unknown as { listenFor(ms: number): Promise<number> }).listenFor(ms),
    ms,
  );

/** Lets what was playing run out of the listener's window. */
export const settled = (page: Page, ms = 200): Promise<void> => page.waitForTimeout(ms);
