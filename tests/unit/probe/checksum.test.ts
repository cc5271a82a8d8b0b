import { describe, expect, it } from 'vitest';
import { crc16, splitChecksum, withChecksum, xor8 } from '../../../daemon/probe/wire/checksum.ts';

describe('XOR checksum', () => {
  // NMEA 0183: XOR of all characters between `$` and `*`. The standard's text was not at hand; seen as quoted from it:
  // the first two are "the examples given in the spec" (github.com/swift-nav/swiftnav-rs/pull/137), GGA stands in
  // docs.rs/crate/sidereon-core (src/nmea/tests.rs), and RMC beside it in many public NMEA samples.
  it.each([
    'GPGLL,5057.970,N,00146.110,E,142451,A*27',
    'GPVTG,089.0,T,,,15.2,N,,*7F',
    'GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47',
    'GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A',
  ])('agrees with the NMEA 0183 sentence %s', (sentence) => {
    const [payload = '', hex = ''] = sentence.split('*');
    expect(xor8(payload)).toBe(Number.parseInt(hex, 16));
    expect(splitChecksum(sentence)).toEqual({ payload, check: 'xor' });
  });
});

describe('CRC-16/CCITT-FALSE', () => {
  // Catalogue of parametrised CRC algorithms, reveng.sourceforge.io/crc-catalogue/16.htm#crc.cat.crc-16-ibm-3740: poly
  // 0x1021, init 0xffff, not reflected, xorout 0, check 0x29b1; seen as quoted from it in Zephyr's and pycyphal's tests.
  it('gives its check value over "123456789"', () => {
    expect(crc16('123456789')).toBe(0x29b1);
  });

  // By the definition: nothing is added to the start value.
  it('gives its start value over nothing', () => {
    expect(crc16('')).toBe(0xffff);
  });

  it('takes itself off a line', () => {
    expect(splitChecksum('123456789*29B1')).toEqual({ payload: '123456789', check: 'crc' });
  });
});

describe('a checksum on a line', () => {
  it.each(['p=1 t=150.25', '', 'x'])('put on and taken off gives %j again', (payload) => {
    for (const check of ['xor', 'crc'] as const) {
      const line = withChecksum(payload, check);
      expect(splitChecksum(line)).toEqual({ payload, check });
      expect(splitChecksum(line.toLowerCase())).toEqual({ payload, check });
    }
    expect(splitChecksum(withChecksum(payload, 'none'))).toEqual({ payload, check: 'none' });
  });

  it.each([
    ['one digit', 't=150*4'],
    ['three digits', 't=150*123'],
    ['five digits', 't=150*12345'],
    ['no digits', 't=150*'],
    ['digits that are none', 't=150*G1'],
    ['another checksum before it', withChecksum('t=150*41')],
    ['something behind it', `${withChecksum('t=150')} `],
    ['a value that does not match', '123456789*29B2'],
  ])('with %s does not count', (_what, line) => {
    expect(splitChecksum(line)).toBeNull();
  });
});
