/** What the program says when it starts and ends, in sentences. */
export const startWords = {
  page: (url: string) => `The page is at ${url}`,
  viewOnly: (host: string) =>
    `Listening on ${host}, which others can reach: every page is view-only. Commands are taken only on 127.0.0.1.`,
  simulated: 'SIMULATED: no serial device was found, so the simulated iron is running.',
  simulatedAsAsked: 'SIMULATED: the simulated iron is running, as asked.',
  choose: (titles: readonly string[]) =>
    `Found: ${titles.join('; ')}. Choose on the page what to watch, or name it with --serial.`,
  watching: (paths: readonly string[]) => `Watching ${paths.join(', ')}.`,
  data: (dir: string) => `Settings and the book are kept in ${dir}`,
  alreadyRunning: (dir: string) =>
    `soleplate is running already with the data folder ${dir}. Use its page, end it first, or name another folder with --data.`,
  portTaken: (address: string) =>
    `Another program already listens on ${address}; perhaps soleplate is running. End it, or choose another with --listen.`,
  cantListen: (address: string, why: string) =>
    `Can't listen on ${address}: ${why}. Choose another with --listen.`,
  cantUseFolder: (dir: string, why: string) =>
    `The data folder ${dir} can't be used: ${why}. Choose another with --data.`,
  setAside: (path: string) => `The book was damaged. It has been set aside as ${path}, and a new one begun.`,
  stopping: 'Stopping: writing what is pending and closing the ports.',
  unexpected: 'Something went wrong that should not have. What is kept is safe; please report this:',
} as const;
