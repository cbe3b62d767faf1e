import type * as childProcess from "node:child_process";
import type { Streams } from "./streams.js";

/** What a shell ends with where the command is not there, or may not be run (POSIX.1, Shell Command Language, 2.8.2). */
const NOT_STARTED: ReadonlySet<number | null> = new Set([126, 127]);

/**
 * Shows a text in the pager that `PAGER` names, else in `less`; false where neither could be started, or `PAGER` is set and
 * empty, which says that none is wanted.
 */
export async function showInPager(text: string, environment: Streams["environment"]): Promise<boolean> {
  const wanted = environment["PAGER"]?.trim();
  if (wanted === "") return false;
  // Why: hardly any run of the program starts another.
  const { spawn } = await import("node:child_process");
  return new Promise((resolve) => {
    const pager = startPager(spawn, wanted, environment);
    // Why: an interrupt is the pager's; it goes on, and so must whoever writes to it.
    const stay = () => undefined;
    process.on("SIGINT", stay);
    const finish = (isShown: boolean) => {
      process.off("SIGINT", stay);
      resolve(isShown);
    };
    pager.on("error", () => finish(false));
    pager.on("close", (code) => finish(!NOT_STARTED.has(code)));
    // Why: a reader who leaves before the end closes the pipe, which is no fault.
    pager.stdin?.on("error", () => undefined);
    pager.stdin?.end(text);
  });
}

/** `-F` leaves at once where the text fits the screen, `-R` lets colour through, `-X` leaves the text standing. */
function startPager(
  spawn: typeof childProcess.spawn,
  wanted: string | undefined,
  environment: Streams["environment"],
): childProcess.ChildProcess {
  const options = { env: { ...environment }, stdio: ["pipe", "inherit", "inherit"] } as const;
  return wanted === undefined
    ? spawn("less", ["-FRX"], { ...options, stdio: [...options.stdio] })
    : spawn(wanted, { ...options, stdio: [...options.stdio], shell: true });
}
