/** What the user is told of the simulated iron's own connection. */

export const simulatedWords = {
  unplugged: 'The simulated iron plays a pulled cable. It comes back by itself; nothing is to be done.',
} as const;
