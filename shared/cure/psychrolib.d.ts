/** The part of the library that `humid-air.ts` uses; it comes without types. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    /** Pa over water, and over ice below 0.01 degC; throws outside -100 to 200 degC. */
    GetSatVapPres(airC: number): number;
    /** degC; throws where the pressure belongs to no temperature from -100 to 200 degC. */
    GetTDewPointFromVapPres(airC: number, vapourPa: number): number;
  }
  const psychrolib: Psychrometrics;
  export default psychrolib;
}
