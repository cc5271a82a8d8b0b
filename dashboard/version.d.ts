/** The version in package.json, put in at build. */
declare const __PROGRAM_VERSION__: string;
