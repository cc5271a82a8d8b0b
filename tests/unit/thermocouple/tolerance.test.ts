import { describe, expect, it } from 'vitest';
import { toleranceK } from '../../../shared/thermocouple/tolerance.ts';

describe('toleranceK', () => {
  it('is the fixed figure until the share overtakes it', () => {
    expect(toleranceK('K', 'astm-standard', 200)).toBe(2.2);
    expect(toleranceK('K', 'astm-standard', 400)).toBe(3);
  });

  it('counts the share from 0 degC in both directions', () => {
    expect(toleranceK('K', 'astm-standard', -150)).toBe(3);
  });

  it('is null for a class that the type does not have', () => {
    expect(toleranceK('J', 'iec-3', 0)).toBeNull();
    expect(toleranceK('N', 'astm-standard', -10)).toBeNull();
  });

  it.each([1260.1, -200.1, NaN, Infinity])('is null at %d degC', (tC) => {
    expect(toleranceK('K', 'astm-standard', tC)).toBeNull();
  });
});
