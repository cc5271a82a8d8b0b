/** Air pressure and altitude as they are read at a bench. */

/** An inch of mercury at 0 degC, hPa (NIST SP 811, appendix B.8: 3386.389 Pa). */
export const HPA_PER_INHG = 33.86389;
/** A foot, m: exact by definition. */
export const M_PER_FT = 0.3048;
