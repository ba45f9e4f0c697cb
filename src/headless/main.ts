import { flyByWorkers, workersFor, workIfHired } from './batch.ts';
import { callersFolder } from './files.ts';
import { flyOne, tell } from './fly.ts';
import { listText } from './list.ts';
import { parseOptions } from './options.ts';
import { type Orders, ordersFrom } from './orders.ts';
import { play } from './play.ts';
import { asInput, Refused } from './refused.ts';

/** What the command says and how it ends: 0 flown, 2 an argument or a file is wrong, 1 a defect. */
export interface Answer {
  readonly code: 0 | 1 | 2;
  readonly out: string;
  readonly error: string;
}

/** Everything short of flying: something to say at once, or orders that have been checked. */
const listen = (args: readonly string[], folder: string): string | Orders => {
  const options = asInput(() => parseOptions(args));
  if (options.list !== undefined) return listText(options.json !== undefined);
  if (options.play !== undefined) return play(options.play, folder);
  return asInput(() => ordersFrom(options, folder));
};

const failed = (error: unknown): Answer => {
  if (error instanceof Refused) {
    return { code: 2, out: '', error: `${error.message.replaceAll(/\s*\n\s*/g, ' ')}\n` };
  }
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return { code: 1, out: '', error: `defect: ${trace}\n` };
};

const said = (out: string): Answer => ({ code: 0, out, error: '' });

/** Flies what was ordered, one flight after the other. */
const flyAll = (orders: Orders): string =>
  tell(
    orders,
    orders.scenarios.map((scenario) => flyOne(orders, scenario)),
  );

/** The command without its process, by no workers: `folder` is where the caller stands. */
export const answer = (args: readonly string[], folder: string): Answer => {
  try {
    const heard = listen(args, folder);
    return said(typeof heard === 'string' ? heard : flyAll(heard));
  } catch (error) {
    return failed(error);
  }
};

/** The same with a batch spread over `--jobs` workers, a large one over the machine's cores; `program` is the built command. */
const answerOnCores = async (args: readonly string[], folder: string, program: URL): Promise<Answer> => {
  try {
    const heard = listen(args, folder);
    if (typeof heard === 'string') return said(heard);
    const workers = workersFor(heard);
    if (workers === 1) return said(flyAll(heard));
    return said(tell(heard, await flyByWorkers(program, args, heard, workers)));
  } catch (error) {
    return failed(error);
  }
};

/** The command. Writes what it has to say, and gives the exit code. */
export const main = async (args: readonly string[], program: URL): Promise<number> => {
  const { code, out, error } = await answerOnCores(args, callersFolder(process.env, process.cwd()), program);
  process.stdout.write(out);
  process.stderr.write(error);
  return code;
};

workIfHired();
