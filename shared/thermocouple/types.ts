/** The thermocouple types that can be read. */
export const thermocoupleTypes = ['K', 'J', 'T', 'E', 'N'] as const;
export type ThermocoupleType = (typeof thermocoupleTypes)[number];
