/** What is said of the command line, in sentences. */
export const optionWords = {
  help: `soleplate: watches the hand irons that shrink polyester fabric onto an airframe.

  npm start                              watch what is there: asks which device, or runs the simulated iron
  npm start -- --serial /dev/ttyUSB0     watch a device on a serial port
  npm start -- ports                     list the serial ports, with what tells them apart
  npm start -- verify SESSION            check a stored session's seal and fold it again

Options, each with the environment variable of the same meaning:
  --serial PATH[@BAUD]  a device to watch; may be given several times (SOLEPLATE_SERIAL, separated by commas);
                        115200 baud unless said otherwise
  --simulate            watch the simulated iron, labelled SIMULATED everywhere (SOLEPLATE_SIMULATE=1)
  --simulate-pad        the same with its probe in a check pad, on which the iron is parked between passes: say so
                        under Setup, Irons and probes (SOLEPLATE_SIMULATE_PAD=1)
  --speed N             run the simulated iron N times as fast, 0.1 to 1000 (SOLEPLATE_SPEED)
  --thermocouple TYPE   let the simulated iron send the emf of this type, with "-reversed" behind it for swapped wires,
                        as K or J-reversed (SOLEPLATE_THERMOCOUPLE)
  --listen HOST:PORT    where the page is, 127.0.0.1:7350 unless set (SOLEPLATE_LISTEN); any address but loopback
                        is view-only
  --data DIR            where settings and the book are kept (SOLEPLATE_DATA)
  --help, --version
`,
  unknownOption: (name: string) => `There is no option "${name}". See --help for those that there are.`,
  valueMissing: (name: string) => `${name} needs a value behind it. See --help for what it may be.`,
  noValue: (name: string) => `${name} takes no value: it stands alone.`,
  malformed: (why: string) => `${why}\nSee --help for what can be said.`,
  unknownCommand: (word: string) =>
    `"${word}" is no command. The commands are: ports, verify. A device is named with --serial ${word}. See --help.`,
  notFor: (option: string, command: string) =>
    `--${option} is not for the command "${command}": leave it out. See --help.`,
  tooMany: (rest: string) => `"${rest}" is too much: the command "ports" takes nothing more.`,
  verifyWhat:
    'The command "verify" takes one session: npm start -- verify SESSION. The page and /api/sessions list them.',
  speed: (said: string, fastest: number) => `${said}: a number from 0.1 to ${fastest} is needed.`,
  serialAndSimulate:
    '--serial and --simulate exclude each other: a real device is never mixed with the simulated one.',
  speedWithoutSimulate: (said: string) =>
    `${said}: the speed is for the simulated iron only; add --simulate.`,
  thermocouple: (said: string, types: readonly string[]) =>
    `${said}: one of ${types.join(', ')} is needed, with "-reversed" behind it for swapped wires.`,
  thermocoupleWithoutSimulate: (said: string) =>
    `${said}: it is for the simulated iron only, since a real board has its own; add --simulate.`,
  serialTwice: (path: string) => `--serial ${path} is given twice: a device can be watched once.`,
  flag: (said: string) => `${said}: 1 or 0 is needed.`,
  serial: (said: string) =>
    `${said}: a port is needed, as /dev/ttyUSB0 or COM3, with @BAUD behind it if not 115200.`,
  baud: (said: string) =>
    `${said}: the baud rate behind "@" must be a whole number from 300 to 4000000, as @115200.`,
  listen: (said: string) =>
    `${said}: HOST:PORT is needed, as 127.0.0.1:7350 or [::1]:7350, with a port from 0 to 65535.`,
  log: (said: string, levels: readonly string[]) => `${said}: one of ${levels.join(', ')} is needed.`,
  data: '--data: a folder is needed. Leave the option out for the usual one.',
} as const;
