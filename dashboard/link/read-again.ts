/**
 * A reading that is asked for again and again: one at a time, and once more after the one under way, so that changes
 * that come quickly are one reading, and an old answer never stands in the place of a newer one.
 */
export function oneAtATime(read: () => Promise<void>): () => void {
  let isReading = false;
  let again = false;
  const run = async (): Promise<void> => {
    isReading = true;
    do {
      again = false;
      await read();
    } while (again);
    isReading = false;
  };
  return () => {
    again = true;
    if (!isReading) void run();
  };
}
