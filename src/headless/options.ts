/** The command's options as text; what they mean is settled where they are used. */
interface OptionKind {
  /** How its value is called in a message; null: the option stands alone. */
  readonly value: string | null;
}

const OPTIONS = {
  list: { value: null },
  json: { value: null },
  exercise: { value: 'NAME' },
  aeroplane: { value: 'NAME or FILE.json' },
  aerodrome: { value: 'NAME or FILE.json' },
  runway: { value: 'ID' },
  wind: { value: 'DDD/SS or DDD/SSgGG' },
  'wind-above': { value: 'DDD/SS' },
  turbulence: { value: 'none, light or moderate' },
  temp: { value: 'degrees C' },
  qnh: { value: 'HPA' },
  metar: { value: 'TEXT' },
  seed: { value: 'N' },
  start: { value: 'LEG or FILE.json' },
  trimmed: { value: null },
  controls: { value: 'FILE.csv or none' },
  assists: { value: 'none or rudder' },
  radio: { value: 'none, untowered or towered' },
  coach: { value: 'talked, reminded or silent' },
  scenario: { value: 'FILE.json' },
  play: { value: 'FILE.json' },
  duration: { value: 'seconds' },
  circuits: { value: 'N' },
  track: { value: 'FILE.csv' },
  rate: { value: 'HZ' },
  gpx: { value: 'FILE.gpx' },
  result: { value: 'FILE.json or -' },
  repeat: { value: 'N' },
  jobs: { value: 'N' },
} as const satisfies Readonly<Record<string, OptionKind>>;

export type OptionName = keyof typeof OPTIONS;
export type Options = Partial<Record<OptionName, string>>;

const isOption = (name: string): name is OptionName => Object.hasOwn(OPTIONS, name);

/** Reads `--name value` and `--name=value`. Throws an Error sentence at the first argument it cannot use. */
export const parseOptions = (args: readonly string[]): Options => {
  const options: Options = {};
  for (let i = 0; i < args.length; i += 1) {
    const arg = args[i] as string;
    const [name = '', inline] = splitInline(arg);
    if (!arg.startsWith('--') || !isOption(name)) {
      const known = Object.keys(OPTIONS).map((option) => `--${option}`);
      throw new Error(`options must be among ${known.join(' ')}, was "${arg}"`);
    }
    if (options[name] !== undefined) throw new Error(`--${name} must be given once, was given twice`);
    const { value } = OPTIONS[name];
    if (value === null) {
      if (inline !== undefined) throw new Error(`--${name} must stand alone, was "${arg}"`);
      options[name] = '';
      continue;
    }
    const next = inline ?? args[i + 1];
    if (next === undefined || next === '' || (inline === undefined && next.startsWith('--'))) {
      throw new Error(
        `--${name} must be followed by ${value}, found ${next === undefined ? 'nothing' : `"${next}"`}`,
      );
    }
    if (inline === undefined) i += 1;
    options[name] = next;
  }
  return options;
};

const splitInline = (arg: string): [string?, string?] => {
  const body = arg.slice(2);
  const at = body.indexOf('=');
  return at < 0 ? [body] : [body.slice(0, at), body.slice(at + 1)];
};

const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)$/;

/** A number within limits, or an Error sentence naming the option. */
export const numberOption = (
  options: Options,
  name: OptionName,
  low: number,
  high: number,
  whole = false,
): number | null => {
  const text = options[name];
  if (text === undefined) return null;
  const value = NUMBER.test(text) ? Number(text) : Number.NaN;
  if (Number.isNaN(value) || value < low || value > high || (whole && !Number.isInteger(value))) {
    throw new Error(`--${name} must be a ${whole ? 'whole ' : ''}number from ${low} to ${high}, was ${text}`);
  }
  return value;
};

/** One of a few words, or an Error sentence naming the option. */
export const wordOption = <W extends string>(
  options: Options,
  name: OptionName,
  words: readonly W[],
  otherwise: W,
): W => {
  const text = options[name];
  if (text === undefined) return otherwise;
  const found = words.find((word) => word === text);
  if (found === undefined) throw new Error(`--${name} must be one of ${words.join(', ')}, was ${text}`);
  return found;
};
