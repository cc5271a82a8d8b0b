/** Why a line was not taken. */
export const rejectCauses = [
  'too-long',
  'unfinished',
  'checksum',
  'not-ascii',
  'malformed',
  'bad-value',
  'incomplete',
] as const;
export type RejectCause = (typeof rejectCauses)[number];
