/** What the verification of a session says, in sentences. */
export const verifyWords = {
  noSession: (id: string, dir: string) => `The book in ${dir} has no session ${id}.`,
  counts: (samples: number, findings: number) => `${samples} samples, ${findings} findings.`,
  sealHolds:
    'The seal holds: nothing was changed since the digest that stands on the signed page. It proves no more than that.',
  sealBroken: (index: number, fromMs: number, toMs: number, what: string) =>
    `The seal is broken at commit ${index}, from ${(fromMs / 1000).toFixed(1)} s to ${(toMs / 1000).toFixed(1)} s of the session: ${what}`,
  otherVersion: (version: number) =>
    `It was recorded by another version of the rules (${version}); findings are compared by identity and to 0.01 °C.`,
  differences: (n: number) =>
    n === 0 ? 'Folded again, it gives the stored findings.' : `Folded again, ${n} findings differ:`,
  difference: (seq: number, subject: string, stored: string, replayed: string) =>
    `  input ${seq}, ${subject}: stored ${stored}, now ${replayed}`,
  none: 'none',
} as const;
