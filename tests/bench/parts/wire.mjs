/** What the devices send: lines of the line protocol with their checksum. */

/** One line with its end. */
export function wireLine(n, ms, tC) {
  const payload = `p=1 n=${n % 65_536} ms=${ms} t=${tC.toFixed(2)}`;
  let sum = 0;
  for (let i = 0; i < payload.length; i += 1) sum ^= payload.charCodeAt(i);
  return `${payload}*${sum.toString(16).toUpperCase().padStart(2, '0')}\n`;
}

/** A plate that its thermostat regulates, degC, with the noise of a probe: above what counts as cold, under every limit. */
export function regulatedC(device, s) {
  const swing = 8 * Math.sin((2 * Math.PI * s) / 40 + device);
  return 150 + swing + 0.4 * Math.sin(s * 97 + device * 13);
}

const LOWEST_F = 240;
/** Within this time no number comes twice, ms, so that each one tells which line it came from. */
const DISTINCT_MS = 400;

/**
 * Temperatures, degC, that follow each other by two whole degrees Fahrenheit and come back after `DISTINCT_MS`: up by the
 * even ones and down by the odd, so that each line changes the number on the page and none is a jump.
 */
export function distinctTemperatures(hz) {
  const pairs = Math.ceil(Math.max(8, (hz * DISTINCT_MS) / 1000) / 2);
  const up = Array.from({ length: pairs }, (_, i) => LOWEST_F + 2 * i);
  const down = up.map((f) => f + 1).toReversed();
  return [...up, ...down].map((f) => Math.round(((f - 32) * 500) / 9) / 100);
}
