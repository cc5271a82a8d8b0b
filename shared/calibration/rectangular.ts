/**
 * Standard uncertainty of what is only known to lie within limits, anywhere between them as likely: a rectangular
 * distribution (GUM 4.3.7). In the unit of its half-width.
 * @param halfWidth how far the limits are from the middle
 */
export const rectangularU = (halfWidth: number): number => halfWidth / Math.sqrt(3);
