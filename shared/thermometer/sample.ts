/** What the wire said about one probe, before anything is concluded from it. */

/** `device/name`: a device by its USB serial number, else its port; a name as the device gives it. */
export type ProbeId = string;

/** A fault that the device itself, or the text of its number, reports. */
export type WireFault = 'open' | 'short-to-ground' | 'short-to-supply' | 'cold-junction' | 'not-a-number';

/**
 * One line of the wire, as values. What the line did not carry is null.
 * Either `tC` (linearised by the device) or `emfUv` with `coldJunctionC` (linearised by us), or neither.
 */
export interface Sample {
  readonly probe: ProbeId;
  /** Hot junction as the device linearised it, degC. */
  readonly tC: number | null;
  /** Thermocouple emf, microvolt. */
  readonly emfUv: number | null;
  readonly coldJunctionC: number | null;
  /** Device clock, ms, wraps at 2^32. */
  readonly deviceMs: number | null;
  /** The iron's motion: RMS acceleration with gravity taken out, g. */
  readonly motionG: number | null;
  /** 1 pressed since the last line, 2 pressed twice. */
  readonly button: 1 | 2 | null;
  /** Shop air, degC. */
  readonly airC: number | null;
  /** Shop air, relative humidity in percent. */
  readonly rhPct: number | null;
  readonly faults: readonly WireFault[];
}

/** A sample that carries nothing, for building others from. */
export const emptySample = (probe: ProbeId): Sample => ({
  probe,
  tC: null,
  emfUv: null,
  coldJunctionC: null,
  deviceMs: null,
  motionG: null,
  button: null,
  airC: null,
  rhPct: null,
  faults: [],
});

/** The device part of a probe's id: everything before the last slash (a port's own path has slashes too). */
export const deviceOf = (probe: ProbeId): string => probe.slice(0, probe.lastIndexOf('/'));
