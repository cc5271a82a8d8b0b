/** What the user is told about the book: why nothing can be kept, and what to do about it. */

export const bookWords = {
  diskFull: (folder: string) =>
    `The disk is full, so nothing is kept. Free some space on the disk of ${folder}; keeping resumes by itself.`,
  readOnly: (folder: string) =>
    `The folder ${folder} can't be written to, so nothing is kept. Give this user the right to write there, or start with --data and another folder.`,
  readOnlyForReading: (file: string) =>
    `${file} can't be read where its folder can't be written to: SQLite keeps the log's index beside it. Give this user the right to write there, or copy the book to a folder that can be written to.`,
  locked: (file: string) =>
    `Another program has locked ${file}, so nothing is kept. Close what has it open (a database viewer, a backup); keeping resumes by itself.`,
  damaged: (file: string) =>
    `${file} is damaged: part of it can't be read. Check the disk, and verify the sessions to see which still hold.`,
  setAside: (file: string, under: string) =>
    `${file} is damaged. It was set aside as ${under}, not deleted, and a new book was begun; check the disk.`,
  newerThanProgram: (file: string, book: number, program: number) =>
    `${file} is a book of version ${book}, and this program knows books up to version ${program}. Start the newer program that wrote it, or start with --data and another folder.`,
  olderThanProgram: (file: string, book: number, program: number) =>
    `${file} is a book of version ${book}, and this program reads version ${program}. Start the daemon once on this folder: it brings the book up to date.`,
  noLog: (folder: string) =>
    `The folder ${folder} can't hold the book's log (SQLite WAL), as on some network drives, so nothing is kept. Start with --data and a folder on a disk of this machine.`,
  notDurable: (folder: string) =>
    `SQLite doesn't take the settings that make the book last through a power cut in ${folder}, so nothing is kept. Start with --data and a folder on a disk of this machine.`,
  ioError: (file: string, detail: string) =>
    `The disk reported an error at ${file} (${detail}), so nothing is kept. Check the disk and its cable, or start with --data and a folder on another disk.`,
  other: (file: string, detail: string) => `The book ${file} can't be used: ${detail}`,
  threadEnded: (detail: string) => `The part of the program that keeps the book has stopped: ${detail}`,
  closed: 'The book has been closed.',
  noSuchSession: (id: string, file: string) =>
    `There is no session ${id} in ${file}. The list of sessions shows those that there are.`,
  sessionGone: (id: string, file: string) =>
    `Session ${id} isn't in ${file}: the file was moved, deleted or set aside while the session ran. It has to go on as a new session.`,
  sessionExists: (id: string) => `There is already a session ${id} in the book.`,
  sessionEnded: (id: string) => `Session ${id} has ended: nothing can be added to it.`,
  outOfOrder: (id: string, what: string) => `Session ${id}: ${what}.`,
  brokenChain: (id: string, index: number, what: string) =>
    `Session ${id} can't be read past commit ${index}: ${what}. Verify it to see the span of time.`,
  lockUnavailable: (file: string, detail: string) =>
    `The lock ${file} can't be taken (${detail}): whether another daemon uses this folder isn't known.`,
} as const;

/** What is wrong with a commit, for verification. */
export const chainWords = {
  missing: 'it is missing',
  unreadable: (detail: string) => `it can't be read (${detail})`,
  misplaced: 'it stands at the wrong place',
  changed: 'its content does not match its link',
  miscounted: 'its counts of samples and findings do not match what it holds',
  notReplayed: (detail: string) => `its inputs can't be folded again (${detail})`,
} as const;
